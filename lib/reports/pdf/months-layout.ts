import type { MonthsChart } from "@/lib/views/chart-rows";
import { axisScale } from "./axis-scale";
import { chartText } from "./chart-words";
import { widthOf } from "./font";
import { linesWithin } from "./lines-within";

export const monthsHeight = 172;

/** Where the parts of a chart over months stand, in points; what a line is called stands at its right end. */
export function monthsLayout(chart: MonthsChart, width: number) {
  const { size, line } = chartText;
  const { axis, rows, references } = chart;
  const left = Math.max(0, ...axis.ticks.map((tick) => widthOf(tick.words, size))) + 6;
  const names = references.map((one) => linesWithin(one.words, { width: 105, size }));
  const right = width - (references.length > 0 ? widest(names.flat()) + 8 : 4);
  const [top, bottom] = [20, monthsHeight - 18];
  const up = axisScale(axis, bottom, top);
  const step = (right - left) / Math.max(1, rows.length);
  const middleOf = (place: number) => left + (place + 0.5) * step;

  // From the top down, each at its line or under the name before.
  const order = references
    .map((reference, place) => ({ y: up(reference.value), lines: names[place] ?? [] }))
    .sort((one, other) => one.y - other.y);
  const placed: { y: number; lines: string[]; first: number }[] = [];
  for (const one of order) {
    const wanted = one.y + 2.8 - ((one.lines.length - 1) / 2) * line;
    const before = placed.at(-1);
    const least = before ? before.first + before.lines.length * line + 2 : top;
    placed.push({ ...one, first: Math.max(wanted, least) });
  }
  return { left, right, top, bottom, up, middleOf, references: placed };
}

function widest(texts: readonly string[]): number {
  return Math.max(0, ...texts.map((text) => widthOf(text, chartText.size)));
}

/** Rows that follow each other without a gap, with their places. */
export function unbrokenRuns(rows: MonthsChart["rows"]): { place: number; estimate: number }[][] {
  const runs: { place: number; estimate: number }[][] = [[]];
  rows.forEach(({ estimate }, place) => {
    if (estimate === null) runs.push([]);
    else runs.at(-1)?.push({ place, estimate });
  });
  return runs.filter((run) => run.length > 0);
}
