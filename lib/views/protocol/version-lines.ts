import type { Protocol, Version } from "@/lib/protocol/protocol";
import { day } from "../day";
import { criterionWords } from "./criterion-words";
import type { OwnWords } from "./own-words";

/** A version of a criterion in a practice, as its page lists it. */
export type VersionLine = {
  readonly id: number;
  readonly from: string;
  /** "in force", "to come", "before", "never in force". */
  readonly state: string;
  /** What it demands; null where it takes the criterion out of force. */
  readonly demands: string | null;
  readonly target: string | null;
  readonly reason: string;
  /** "A. Lead, 3 Jul 2026" */
  readonly by: string;
  readonly mayWithdraw: boolean;
};

/** The versions that a practice wrote, the one that begins last first. */
export function versionLines(
  protocol: Protocol,
  of: { readonly id: string; readonly practice: string; readonly today: string },
  own: OwnWords,
): VersionLine[] {
  const versions = protocol.versions
    .filter(({ criterion, practice }) => criterion.id === of.id && practice === of.practice)
    .sort((one, other) =>
      one.from === other.from ? other.id - one.id : one.from < other.from ? 1 : -1,
    );
  return versions.map((version, place) => {
    const words = criterionWords(version.criterion, own);
    return {
      id: version.id,
      from: day(version.from),
      state: stateOf(version, versions, place, of.today),
      demands: version.inForce ? words.whole : null,
      target: version.inForce ? words.target : null,
      reason: version.reason,
      by: `${version.by}, ${day(version.writtenOn)}`,
      mayWithdraw: version.from >= of.today,
    };
  });
}

/** @param versions the one that begins last first; of one day the one written last */
function stateOf(
  { from, inForce }: Version,
  versions: readonly Version[],
  place: number,
  today: string,
): string {
  if (versions[place - 1]?.from === from) return "replaced before it held";
  if (from > today) return "to come";
  const holds = versions.findIndex((one) => one.from <= today) === place;
  if (!holds) return "before";
  return inForce ? "in force" : "out of force";
}
