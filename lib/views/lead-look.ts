import type { Completeness } from "@/lib/audit/completeness";
import type { Figure } from "@/lib/audit/figure";
import { criterionLines, type LookLine } from "./lead-look-criteria";
import { count } from "./quantity";

/** Everything the sentences rest on. Figures are of practices and the group: no sentence is about a person. */
export type LookAt = {
  readonly criteria: readonly Figure[];
  readonly completeness: readonly Completeness[];
  readonly gaps: readonly string[];
  readonly disagreeing: number;
  readonly filters: Readonly<Record<string, string | undefined>>;
};

/**
 * What needs a look, as far as the methods in use carry: criteria missed beyond chance or not assessable, misses of
 * what should always be done, weeks without records, values that disagree. Differences between clinicians are weighed
 * against chance apart from this.
 */
export function lookLines(at: LookAt): LookLine[] {
  const rates = at.criteria.filter((figure) => figure.kind === "rate");
  return [
    ...criterionLines(rates, at.filters),
    ...(at.gaps.length > 0
      ? [
          {
            words: `${at.gaps.join(" ")} Closed, or records that have not come in: only the practice can tell.`,
          },
        ]
      : []),
    ...(at.disagreeing > 0
      ? [
          {
            words: `${count(at.disagreeing)} ${at.disagreeing === 1 ? "canal has" : "canals have"} a volume, flow and time that disagree by over a tenth.`,
            href: "#disagreeing",
            hrefWords: "See which",
          },
        ]
      : []),
  ];
}

/** What is said where nothing needs a look. */
export const nothingToSee =
  "No criterion is missed beyond chance, none falls short of its completeness floor, and no week is without records. This does not say that there is nothing: small differences cannot be seen in one quarter.";
