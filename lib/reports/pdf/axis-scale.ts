import type { ChartAxis } from "@/lib/views/chart-rows";

/** Where values of an axis lie between two ends, in points; what lies beyond an end is drawn at it. */
export function axisScale(axis: ChartAxis, from: number, until: number) {
  const span = axis.max - axis.min || 1;
  return (value: number) => {
    const share = (value - axis.min) / span;
    return from + Math.min(1, Math.max(0, share)) * (until - from);
  };
}

/** Whether a value lies on the axis. */
export function onAxis(axis: ChartAxis, value: number): boolean {
  return value >= axis.min && value <= axis.max;
}

/** Those of some words on a line that stand free of the ones before, each by its middle and width. */
export function freeOfEachOther<Of extends { readonly middle: number; readonly width: number }>(
  words: readonly Of[],
  gap: number,
): Of[] {
  const kept: Of[] = [];
  for (const one of words) {
    const last = kept.at(-1);
    const free = !last || one.middle - one.width / 2 - (last.middle + last.width / 2) >= gap;
    if (free) kept.push(one);
  }
  return kept;
}
