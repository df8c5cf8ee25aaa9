import { protocolReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { defaults, notInForceAtFirst } from "@/lib/protocol/defaults/defaults";
import type { Protocol } from "@/lib/protocol/protocol";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { withdrawnVersions } from "@/lib/store/protocol/withdrawn-versions";
import type { PracticeRow } from "@/lib/store/records/practices";
import { day } from "@/lib/views/day";
import { criterionState } from "@/lib/views/protocol/criterion-state";
import { type CriterionWords, criterionWords } from "@/lib/views/protocol/criterion-words";
import { type OwnWords, ownWordsOf } from "@/lib/views/protocol/own-words";
import { standingSentence } from "@/lib/views/protocol/protocol-view";
import { type VersionLine, versionLines } from "@/lib/views/protocol/version-lines";
import type { Address } from "../asked-period";
import { askedPractice } from "./asked-practice";

export type CriterionPage = {
  readonly practices: readonly PracticeRow[];
  readonly practice: PracticeRow;
  readonly id: string;
  readonly title: string;
  readonly statement: string;
  readonly rationale: string;
  readonly source: string;
  readonly targetSource: string;
  readonly words: CriterionWords;
  readonly inForce: boolean;
  /** In one sentence. */
  readonly standing: string;
  readonly versions: readonly VersionLine[];
  /** What every practice begins with, where this is one of those criteria: in force at first or not. */
  readonly atFirst: { readonly demands: string; readonly inForce: boolean } | null;
  /** What was withdrawn before it began, in words. */
  readonly withdrawn: readonly { readonly id: number; readonly words: string }[];
  readonly mayChange: boolean;
  readonly today: string;
};

/** A criterion that the practice has not, but others have. */
export type CriterionElsewhere = {
  readonly elsewhere: {
    readonly title: string;
    readonly practice: PracticeRow;
    readonly has: readonly PracticeRow[];
  };
};

/**
 * All that a criterion states in a practice, and its versions; where others have it, which; null where none that the
 * viewer may see has it. @throws Refused, AskedWrongly
 */
export async function criterionPage(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<CriterionPage | CriterionElsewhere | null> {
  const reach = protocolReach(viewer);
  const { practices, practice, today, mayChange } = await askedPractice(reach, address);
  if (!practice) return null;
  const of = { id, practice: practice.code, today };
  const [protocol, terms, withdrawn] = await Promise.all([
    protocolWithin(reach),
    ownTerms(reach),
    withdrawnVersions(reach, practice.code, id),
  ]);
  const state = criterionState(protocol, of);
  if (!state) return elsewhere(protocol, id, practice, practices);
  const own = ownWordsOf(terms.filter((one) => one.practice === practice.code));
  const { title, statement, rationale, source, targetSource } = state.latest;
  return {
    ...{ practices, practice, id, title, statement, rationale, source, targetSource },
    words: criterionWords(state.latest, own),
    inForce: state.inForce !== null,
    standing: standingSentence(state, protocol, practice.code),
    versions: versionLines(protocol, of, own),
    atFirst: atFirst(id, own),
    withdrawn: withdrawn.map((one) => ({
      id: one.id,
      words: `From ${day(one.from)}: ${one.reason} (${one.by}); withdrawn by ${one.withdrawnBy}, ${day(one.withdrawnAt.toISOString())}.`,
    })),
    mayChange,
    today,
  };
}

function elsewhere(
  protocol: Protocol,
  id: string,
  practice: PracticeRow,
  practices: readonly PracticeRow[],
): CriterionElsewhere | null {
  const versions = protocol.versions.filter(({ criterion }) => criterion.id === id);
  const has = practices.filter(({ code }) => versions.some((one) => one.practice === code));
  const title = versions.at(-1)?.criterion.title;
  return title === undefined || has.length === 0 ? null : { elsewhere: { title, practice, has } };
}

function atFirst(id: string, own: OwnWords): CriterionPage["atFirst"] {
  const first = defaults.find((one) => one.id === id);
  return first
    ? { demands: criterionWords(first, own).whole, inForce: !notInForceAtFirst.includes(id) }
    : null;
}
