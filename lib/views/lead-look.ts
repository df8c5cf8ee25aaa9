import type { Completeness } from "@/lib/audit/completeness";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { intervalWords, valueWords } from "./figure-line";
import { measureAddress } from "./lead-address";
import { titleOf, unitName } from "./measure-words";
import { count, setShare } from "./quantity";
import { subjectName } from "./subject-name";

/** A sentence on what needs a look, and where to look. */
export type LookLine = {
  readonly words: string;
  readonly href?: string;
  readonly hrefWords?: string;
};

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
    ...rates.flatMap((figure) => criterionLine(figure, at.filters) ?? []),
    ...at.gaps.map((words) => ({
      words: `${words} Closed, or records that have not come in: only the practice can tell.`,
    })),
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

function criterionLine(figure: RateFigure, filters: LookAt["filters"]): LookLine | null {
  const words = criterionWords(figure);
  if (!words) return null;
  const missed = figure.beyondChance === "missed";
  const state = missed && figure.notMet > 0 ? "not-met" : "not-recorded";
  const practice = figure.about.kind === "practice" ? figure.about.code : filters.practice;
  return {
    words,
    href: measureAddress(
      figure.measure,
      { ...filters, practice, span: "quarter", outcome: state },
      "#records",
    ),
    hrefWords: "See the records",
  };
}

function criterionWords(figure: RateFigure): string | null {
  const title = titleOf(figure);
  const whose = subjectName(figure.about);
  const { estimate, denominator, notRecorded, notMet, target } = figure;
  if (estimate === null || target === undefined) return null;
  const units = `${count(denominator)} ${unitName(figure, denominator)}`;
  if (figure.inTheseRecords === "not assessable") {
    const floor = figure.criterion?.completenessFloor ?? null;
    return `${title}, ${whose}, cannot be assessed: ${count(denominator - notRecorded)} of ${units} are recorded${floor === null ? "" : `, under the floor of ${setShare(floor)}`}.`;
  }
  if (figure.beyondChance !== "missed") return null;
  if (target === 1)
    return `${title}, ${whose}: not done in ${count(notMet)} of ${units}, where every one should be.`;
  return `${title}, ${whose}: ${count(figure.numerator)} of ${units}, ${valueWords(figure, estimate)}; the whole ${intervalWords(figure, figure.interval)} lies under the target of ${setShare(target)}, even were all that is not recorded met.`;
}
