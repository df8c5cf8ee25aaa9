import type { Figure } from "@/lib/audit/figure";
import { criterionOf } from "@/lib/protocol/criteria";
import { axisOf } from "./axis";
import type { ChartReference, MonthRow, MonthsChart } from "./chart-rows";
import { chosenPercent } from "./chosen-percent";
import { month } from "./day";
import { intervalWords, valueWords } from "./figure-line";
import { titleOf, unitName } from "./measure-words";
import { count } from "./quantity";

/**
 * A clinician's own measure month by month; a month without units is a gap.
 *
 * @param months names of the months, oldest first
 * @param found the figures of those months that have units
 */
export function ownMonths(
  measure: string,
  months: readonly string[],
  found: readonly Figure[],
): MonthsChart | null {
  const known = found.filter((figure) => figure.estimate !== null);
  const [some] = known;
  if (!some) return null;
  const rows = months.map((name) =>
    monthRow(
      name,
      found.find((figure) => figure.period === name),
    ),
  );
  const criterion = criterionOf(measure);
  const references: ChartReference[] = criterion
    ? [{ value: criterion.target, words: `target ${chosenPercent(criterion.target)}` }]
    : [];
  const ends = [
    ...rows.flatMap((row) => [row.estimate, row.lower, row.upper].filter((end) => end !== null)),
    ...references.map((line) => line.value),
  ];
  const unit = some.kind === "median" ? some.unit : "share";
  return {
    title: finding(measure, known),
    axis: axisOf(
      ends,
      unit,
      some.kind === "median"
        ? unit === "s"
          ? "median"
          : `median, ${unit}`
        : `share of ${unitName(measure, 2)}`,
      some.kind === "rate" && !criterion,
    ),
    rows,
    references,
    table: {
      head: ["Month", "Estimate and interval"],
      rows: rows.map((row) => ({
        id: row.id,
        cells: [month(row.id), row.words.slice(row.words.indexOf(": ") + 2)],
      })),
    },
  };
}

function monthRow(name: string, figure: Figure | undefined): MonthRow {
  const label = name.endsWith("-01") || name.endsWith("-07") ? month(name) : "";
  if (!figure || figure.estimate === null) {
    return {
      id: name,
      label,
      estimate: null,
      lower: null,
      upper: null,
      words: `${month(name)}: ${figure?.why ?? "no units of yours"}`,
    };
  }
  const units = figure.kind === "median" ? figure.n : figure.denominator;
  return {
    id: name,
    label,
    estimate: figure.estimate,
    lower: figure.interval?.lower ?? null,
    upper: figure.interval?.upper ?? null,
    words: `${month(name)}: ${valueWords(figure, figure.estimate)}, ${intervalWords(figure, figure.interval)}, ${count(units)} ${unitName(figure.measure, units)}`,
  };
}

function finding(measure: string, known: readonly Figure[]): string {
  const title = titleOf(measure);
  const months = known.length === 1 ? "one month" : `${count(known.length)} months`;
  const values = known.map((figure) => figure.estimate ?? 0);
  const [some] = known;
  if (!some) return title;
  if (some.kind === "rate" && !criterionOf(measure)) {
    const without = values.filter((value) => value === 0).length;
    return `${title}: none in ${count(without)} of ${months}`;
  }
  return `${title}: between ${valueWords(some, Math.min(...values))} and ${valueWords(some, Math.max(...values))} in ${months}`;
}
