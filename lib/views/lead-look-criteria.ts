import type { RateFigure } from "@/lib/audit/figure";
import { byKey } from "./by-key";
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

type Filters = Readonly<Record<string, string | undefined>>;
type Trouble = "undone" | "missed" | "not assessable";

/**
 * A sentence for each criterion that is missed beyond chance or not assessable, with every practice in which it is: what is
 * missed first, in page order.
 */
export function criterionLines(figures: readonly RateFigure[], filters: Filters): LookLine[] {
  const troubled = figures.flatMap((figure) => {
    const trouble = troubleOf(figure);
    return trouble ? [{ figure, trouble }] : [];
  });
  const alike = byKey(troubled, ({ figure, trouble }) =>
    JSON.stringify([figure.measure, trouble, figure.target, floorOf(figure)]),
  );
  const lines = [...alike.values()].flatMap((some) => {
    const [first] = some;
    if (!first) return [];
    const same = some.map(({ figure }) => figure);
    return [{ trouble: first.trouble, line: lineOf(same, first.figure, first.trouble, filters) }];
  });
  const isMissed = ({ trouble }: { trouble: Trouble }) => trouble !== "not assessable";
  return [...lines.filter(isMissed), ...lines.filter((one) => !isMissed(one))].map(
    ({ line }) => line,
  );
}

function troubleOf({ estimate, target, inTheseRecords, beyondChance }: RateFigure): Trouble | null {
  if (estimate === null || target === undefined) return null;
  if (inTheseRecords === "not assessable") return "not assessable";
  if (beyondChance !== "missed") return null;
  return target === 1 ? "undone" : "missed";
}

function lineOf(
  figures: readonly RateFigure[],
  first: RateFigure,
  trouble: Trouble,
  filters: Filters,
): LookLine {
  const alone = figures.length === 1;
  const ofPractice = first.about.kind === "practice" ? first.about.code : filters.practice;
  const missed = trouble !== "not assessable" && figures.some(({ notMet }) => notMet > 0);
  return {
    words: alone ? aloneWords(first, trouble) : togetherWords(figures, first, trouble),
    href: measureAddress(
      first.measure,
      {
        ...filters,
        practice: alone ? ofPractice : filters.practice,
        span: "quarter",
        outcome: missed ? "not-met" : "not-recorded",
      },
      "#records",
    ),
    hrefWords: "See the records",
  };
}

function aloneWords(figure: RateFigure, trouble: Trouble): string {
  const head = `${titleOf(figure)}, ${subjectName(figure.about)}`;
  const units = `${count(figure.denominator)} ${unitName(figure, figure.denominator)}`;
  if (trouble === "not assessable")
    return `${head}, cannot be assessed: ${count(recordedOf(figure))} of ${units} are recorded${floorWords(figure)}.`;
  if (trouble === "undone")
    return `${head}: not done in ${count(figure.notMet)} of ${units}, where every one should be.`;
  return `${head}: ${count(figure.numerator)} of ${units}, ${shareOf(figure)}; the whole ${intervalWords(figure, figure.interval)} lies under the target of ${setShare(figure.target ?? 0)}, even were all that is not recorded met.`;
}

function togetherWords(
  figures: readonly RateFigure[],
  first: RateFigure,
  trouble: Trouble,
): string {
  const title = titleOf(first);
  const unit = unitName(first, 2);
  const each = (of: (figure: RateFigure) => number, more: (figure: RateFigure) => string) =>
    figures
      .map(
        (figure, place) =>
          `${subjectName(figure.about).replace("practice ", "")} ${count(of(figure))} of ${count(figure.denominator)}${place === 0 ? ` ${unit}` : ""}${more(figure)}`,
      )
      .join("; ");
  if (trouble === "not assessable")
    return `${title} cannot be assessed, recorded are: ${each(recordedOf, () => "")}${floorWords(first)}.`;
  if (trouble === "undone")
    return `${title}, not done where every one should be: ${each(
      ({ notMet }) => notMet,
      () => "",
    )}.`;
  return `${title} is under its target of ${setShare(first.target ?? 0)} beyond chance, even were all that is not recorded met: ${each(
    ({ numerator }) => numerator,
    (figure) => `, ${shareOf(figure)}`,
  )}.`;
}

function shareOf(figure: RateFigure): string {
  return valueWords(figure, figure.estimate ?? 0);
}

function recordedOf({ denominator, notRecorded }: RateFigure): number {
  return denominator - notRecorded;
}

function floorWords(figure: RateFigure): string {
  const floor = floorOf(figure);
  return floor === null ? "" : `, under the floor of ${setShare(floor)}`;
}

function floorOf({ criterion }: RateFigure): number | null {
  return criterion?.completenessFloor ?? null;
}
