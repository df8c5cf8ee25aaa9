import type { IntervalChart } from "@/lib/views/chart-rows";
import { axisScale } from "./axis-scale";
import { chartText } from "./chart-words";
import { widthOf } from "./font";
import { linesWithin } from "./lines-within";

/** Where the parts of a plot of intervals stand, in points. */
export function intervalLayout(chart: IntervalChart, width: number) {
  const { size, line } = chartText;
  const widest = (texts: readonly string[], face: "plain" | "strong" = "plain") =>
    Math.max(0, ...texts.map((text) => widthOf(text, size, face)));
  const labelRoom = Math.min(widest(chart.rows.map((row) => row.label)), width * 0.34);
  const counts = widest([chart.countsTitle, ...chart.rows.map((row) => row.counts)]);
  const flags = widest(
    chart.rows.flatMap((row) => row.flag ?? []),
    "strong",
  );
  const left = labelRoom + 14;
  const flagEnd = width - counts - 14;
  const right = flags > 0 ? flagEnd - flags - 10 : flagEnd;
  const across = axisScale(chart.axis, left, right);

  const references = chart.references.map((reference) => {
    const x = across(reference.value);
    const toLeft = x > (left + right) / 2;
    const room = toLeft ? x - 4 : flagEnd - x - 4;
    return { x, toLeft, lines: linesWithin(reference.words, { width: room, size }) };
  });
  const top = Math.max(1, references.flatMap((one) => one.lines).length) * line + 6;

  let y = top;
  const rows = chart.rows.map((row) => {
    const label = linesWithin(row.label, { width: labelRoom + 0.5, size });
    const height = Math.max(17, label.length * line + 5);
    y += height;
    return { row, label, middle: y - height / 2, height };
  });
  const bottom = y + 2;
  return { left, right, flagEnd, top, bottom, across, references, rows, height: bottom + 27 };
}
