import type { ChartName, TimeLine, TimePoint, TimeSegment } from "@/lib/audit/over-time";
import type { Measured } from "@/lib/measures/measured";
import { measures } from "@/lib/measures/measures";
import { axisOf } from "./axis";
import { chartKind, noLimitsWords } from "./chart-kind";
import type { ControlChart, ControlRow } from "./control-rows";
import { day, month } from "./day";
import { titleOf, unitName } from "./measure-words";
import { count, percent, quantity } from "./quantity";
import { runWords } from "./run-words";

export type ControlChartOf = {
  readonly measure: Measured;
  /** Whose line, in words, where the page does not say it. */
  readonly whose?: string;
  readonly line: TimeLine;
  readonly rebases: readonly RebaseOf[];
  /** Where a month's own page is. */
  readonly hrefOf?: (month: string) => string;
};

/** A month from which limits begin anew, and why. */
export type RebaseOf = {
  readonly month: string;
  readonly reason: string;
  readonly by: string;
  readonly at: string;
};

/** A measure over time as its chart draws it. */
export function controlChart(of: ControlChartOf): ControlChart {
  const { measure, line } = of;
  const [first] = line.segments;
  const chart = line.segments.at(-1)?.chart ?? "p";
  const rows = line.points.map((point, place) => rowOf(point, place, of, chart));
  const signals = line.segments.flatMap((segment) => signalsOf(segment, rows, measure));
  const values = rows.flatMap((row) => [row.value, row.lower, row.upper, row.centre]);
  const unit = axisUnit(chart, measure);
  return {
    title: `${titleOf(measure)}, ${of.whose ? `${of.whose}, ` : ""}${spanWords(line.points)}: ${findingWords(rows, signals, chart !== "g" && chart !== "t")}`,
    axis: axisOf(
      withRoom(values.filter((value) => value !== null)),
      unit,
      axisWords(chart, measure, unit),
      chart !== "xmr" && chart !== "p" && chart !== "p-prime",
    ),
    kind: chartKind(chart, measure),
    rows,
    rebased: of.rebases.flatMap((rebase) => {
      const row = rows.find(({ id }) => rebase.month <= id.slice(0, 7));
      const words = `Limits begin anew in ${month(rebase.month)}: ${rebase.reason} (${rebase.by}, ${day(rebase.at)})`;
      return row ? [{ id: row.id, words }] : [];
    }),
    signals,
    notes: [
      ...line.segments.flatMap(({ why }) => (why ? [noLimitsWords(why)] : [])),
      ...(first && line.segments.some((segment) => !segment.showsWorsening && !segment.why)
        ? [cannotWorsen(measure)]
        : []),
      ...(line.segments.some(({ runs, why }) => !runs && why !== "no-units") ? [atAnEnd] : []),
      ...(signals.length > 0 ? [outsidePromise] : []),
    ],
    table: {
      head: ["When", "Value", unitsHead(chart, measure), "Limits", "Signal"],
      rows: rows.map((row, place) => ({
        id: row.id,
        cells: cellsOf(row, line.points[place] as TimePoint, measure, chart),
      })),
    },
  };
}

/** Said under signals on a page that promises something of its flags. */
export const outsidePromise =
  "Signals over time are a rule of their own: what the page promises of flags does not count them.";

/** A little room under the lowest value, where a mark would else be cut. */
function withRoom(values: readonly number[]): number[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return low > 0 ? [...values, low - (high - low) / 20] : [...values];
}

const atAnEnd =
  "Half of the points or more lie at the very end of what there can be, or there are none: runs say nothing there.";

function cannotWorsen(measure: Measured): string {
  return `With separations as frequent as here the lower limit is 0, and no gap lies below it: this chart cannot show that they have become more frequent. The running sum of ${unitName(measure, 2)} can.`;
}

function rowOf(point: TimePoint, place: number, of: ControlChartOf, chart: ChartName): ControlRow {
  const { value, centre, lower, upper, outside } = point;
  const between = chart === "g" || chart === "t";
  const when = between ? day(point.id) : month(point.id);
  const quarterStart = ["01", "04", "07", "10"].includes(point.id.slice(5, 7));
  const href = between || value === null ? undefined : of.hrefOf?.(point.id);
  return {
    // Two events can fall on one day.
    id: between ? `${point.id} ${place}` : point.id,
    label: between || quarterStart || place === 0 ? month(point.id) : "",
    value,
    centre,
    lower,
    upper,
    outside,
    words: `${when}: ${pointWords(point, of.measure, chart)}`,
    ...(href ? { href } : {}),
  };
}

function pointWords(point: TimePoint, measure: Measured, chart: ChartName): string {
  const { value, outside, units } = point;
  if (value === null)
    return units === 0
      ? "no units."
      : `only ${count(units)} ${unitName(measure, units)}, too few to stand as a month.`;
  const counted =
    chart === "g" || chart === "t" ? "" : `, ${count(units)} ${unitName(measure, units)}`;
  const open = point.open ? " so far since the last separation" : "";
  const lies = outside ? `; ${outside} the limit` : "";
  return `${valueAt(value, measure, chart)}${open}${counted}${lies}.`;
}

function signalsOf(segment: TimeSegment, rows: readonly ControlRow[], measure: Measured): string[] {
  const { chart } = segment;
  const outside = rows.slice(segment.from, segment.to).filter((row) => row.outside !== null);
  return [
    ...outside.map((row) => {
      const limit = row.outside === "above" ? row.upper : row.lower;
      const [when] = row.words.split(":");
      return `${when}: ${row.value === null ? "" : valueAt(row.value, measure, chart)} lies ${row.outside} the limit of ${limit === null ? "" : valueAt(limit, measure, chart)}.`;
    }),
    ...(segment.runs ? runWords(segment.runs) : []),
  ];
}

/** Of fewer points nothing is said: with them runs have no rule either (lib/statistics/run-chart; common practice). */
const fewestToTell = 10;

function findingWords(
  rows: readonly ControlRow[],
  signals: readonly string[],
  monthly: boolean,
): string {
  if (rows.every((row) => row.value === null)) return "nothing to draw";
  if (signals.length > 0)
    return signals.length === 1
      ? "one signal to look at"
      : `${count(signals.length)} signals to look at`;
  const drawn = rows.filter((row) => row.value !== null).length;
  if (rows.every((row) => row.upper === null)) return "no limits can be drawn";
  if (drawn < fewestToTell)
    return `${count(drawn)} ${monthly ? (drawn === 1 ? "month" : "months") : drawn === 1 ? "point" : "points"}, too few to tell a signal from chance`;
  return "no signal, nothing here that chance alone would not draw";
}

function cellsOf(row: ControlRow, point: TimePoint, measure: Measured, chart: ChartName): string[] {
  const [when = ""] = row.words.split(":");
  const { value, lower, upper } = row;
  return [
    when,
    value === null ? "none" : valueAt(value, measure, chart),
    count(point.units),
    lower === null || upper === null
      ? "none"
      : `${valueAt(lower, measure, chart)} to ${valueAt(upper, measure, chart)}`,
    row.outside ? `${row.outside} the limit` : "",
  ];
}

/** A value of the chart in words. */
function valueAt(value: number, measure: Measured, chart: ChartName): string {
  if (chart === "g") return `${count(Math.round(value))} ${unitName(measure, Math.round(value))}`;
  if (chart === "t")
    return `${count(Math.round(value))} ${Math.round(value) === 1 ? "day" : "days"}`;
  return chart === "xmr" ? quantity(value, unitOf(measure)) : percent(value);
}

function unitOf({ measure }: Measured): string {
  return measures.find((one) => one.id === measure)?.unit ?? "";
}

function axisUnit(chart: ChartName, measure: Measured): string {
  if (chart === "g" || chart === "t") return "";
  return chart === "xmr" ? unitOf(measure) : "share";
}

function axisWords(chart: ChartName, measure: Measured, unit: string): string {
  if (chart === "g") return `${unitName(measure, 2)} between separations`;
  if (chart === "t") return "days between separations";
  if (chart === "xmr") return unit === "s" ? "median" : `median, ${unit}`;
  return `share of ${unitName(measure, 2)}`;
}

function unitsHead(chart: ChartName, measure: Measured): string {
  return chart === "t" ? "days" : unitName(measure, 2);
}

function spanWords(points: readonly TimePoint[]): string {
  const [first, last] = [points[0], points.at(-1)];
  return first && last ? `${month(first.id)} to ${month(last.id)}` : "no months";
}
