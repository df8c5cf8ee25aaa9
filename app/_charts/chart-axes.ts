import type { ChartAxis } from "@/lib/views/chart-rows";
import { textWidth } from "./chart-text";

/** A number axis along the bottom, its title under it. */
export function acrossAxis(axis: ChartAxis) {
  return { ...acrossTicks(axis, 2), height: 44, interval: "equidistantPreserveStart" as const };
}

/** The same of the usual height. @param offset of the title from the axis's lower edge, in pixels upwards. */
export function acrossTicks(axis: ChartAxis, offset: number) {
  return {
    ...valuesOf(axis),
    // A name that no data bear: without one the axis would count columns instead of having its ends.
    dataKey: "value",
    stroke: "var(--rule-strong)",
    label: {
      value: axis.title,
      position: "insideBottom" as const,
      offset,
      fill: "var(--ink-soft)",
      fontSize: 14,
    },
  };
}

/** A number axis upwards; its title is written over the drawing, where it can be read without turning the head. */
export function upAxis(axis: ChartAxis) {
  return {
    ...valuesOf(axis),
    // Room for a mark on the edge, which would else be cut.
    padding: { top: 7, bottom: 7 },
    width: textWidth(axis.ticks.map((tick) => tick.words)),
    axisLine: false,
    tickLine: false,
    interval: 0 as const,
  };
}

function valuesOf(axis: ChartAxis) {
  return {
    type: "number" as const,
    domain: [axis.min, axis.max],
    allowDataOverflow: true,
    ticks: axis.ticks.map((tick) => tick.value),
    // A number and its unit stay on one line.
    tickFormatter: (value: number) =>
      axis.ticks.find((tick) => tick.value === value)?.words.replaceAll(" ", "\u00a0") ?? "",
    tick: { fill: "var(--ink-soft)", fontSize: 14 },
  };
}
