import type { Figure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import { axisOf } from "./axis";
import type { ChartReference, MonthRow, MonthsChart } from "./chart-rows";
import { month } from "./day";
import { cellsInOrder, figureHeads } from "./figure-cells";
import { countWords, estimateWords, valueWords } from "./figure-line";
import { axisTitle } from "./interval-chart";
import { titleOf } from "./measure-words";
import { noneSeen } from "./none-seen";
import { count } from "./quantity";

export type MonthsChartOf = {
  readonly measure: Measured;
  readonly months: readonly Period[];
  /** One subject's figures; a month without one is a gap. */
  readonly figures: readonly Figure[];
  readonly references?: readonly ChartReference[];
  readonly hrefOf?: (month: Period) => string | undefined;
};

/** A measure month by month, oldest first, with gaps for months without units. */
export function monthsChart(of: MonthsChartOf): MonthsChart {
  const byMonth = new Map(of.figures.map((figure) => [figure.period, figure]));
  const rows = of.months.map((one, place) =>
    rowOf(one, byMonth.get(one.name), place, of.hrefOf?.(one)),
  );
  const values = rows
    .flatMap((row) => [row.estimate, row.lower, row.upper])
    .filter((value) => value !== null);
  const sample = of.figures[0];
  const unit = sample?.kind === "median" ? sample.unit : "share";
  const references = of.references ?? [];
  return {
    title: monthsFinding(of.measure, of.months, of.figures),
    axis: axisOf(
      [...values, ...references.map((one) => one.value)],
      unit,
      axisTitle(of.measure, unit),
    ),
    rows,
    references,
    table: {
      head: ["Month", ...figureHeads],
      rows: of.months.map((one) => {
        const figure = byMonth.get(one.name);
        const cells = figure ? cellsInOrder(figure) : ["no units", "", "", "", ""];
        return { id: one.name, cells: [month(one.from), ...cells] };
      }),
    },
  };
}

/** Between what the months lie and how many are gaps; no trend is claimed. */
export function monthsFinding(
  measure: Measured,
  months: readonly Period[],
  figures: readonly Figure[],
): string {
  const known = figures.filter((figure) => figure.estimate !== null);
  const gaps = months.length - known.length;
  const title = titleOf(measure);
  if (known.length === 0) return `${title}: no units in these ${count(months.length)} months`;
  const [sample] = known;
  const values = known.map((figure) => figure.estimate ?? Number.NaN);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const between =
    sample && low === high && !noneSeen(sample)
      ? `${valueWords(sample, low)} in every month with units`
      : sample
        ? `between ${known.some(noneSeen) ? "none" : valueWords(sample, low)} and ${valueWords(sample, high)} a month`
        : "";
  return `${title}: ${between}${gaps > 0 ? `; ${count(gaps)} of ${count(months.length)} months have no units` : ""}`;
}

function rowOf(
  one: Period,
  figure: Figure | undefined,
  place: number,
  href: string | undefined,
): MonthRow {
  const quarterStart = ["01", "04", "07", "10"].includes(one.from.slice(5, 7));
  return {
    id: one.name,
    label: quarterStart || place === 0 ? month(one.from) : "",
    estimate: figure?.estimate ?? null,
    lower: figure?.interval?.lower ?? null,
    upper: figure?.interval?.upper ?? null,
    words: figure
      ? `${month(one.from)}: ${estimateWords(figure)}; ${countWords(figure)}.`
      : `${month(one.from)}: no units.`,
    ...(href && figure ? { href } : {}),
  };
}
