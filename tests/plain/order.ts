import type { MedianEnds, MedianTally } from "@/lib/measures/tally";
import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { grouped } from "./grouped";

/** A value and the patient it belongs to. */
export type ValueOf = { readonly value: number; readonly patient: string | undefined };

/**
 * Median, quartiles (type 7 of Hyndman & Fan 1996), the values at the ranks that bound the median, and Woodruff's
 * interval over patients at the level that `reach` belongs to.
 */
export function order(
  values: readonly ValueOf[],
  ends: MedianEnds,
  level: number,
): Pick<MedianTally, "n" | "median" | "quartiles" | "bounds" | "clustered"> {
  const sorted = values.map(({ value }) => value).toSorted((a, b) => a - b);
  const n = sorted.length;
  if (n === 0) return { n, median: null, quartiles: null, bounds: null, clustered: null };
  const bounding = ends.ranks(n);
  return {
    n,
    median: quantile(sorted, 0.5),
    quartiles: [quantile(sorted, 0.25), quantile(sorted, 0.75)],
    bounds: bounding ? [at(sorted, bounding.lower - 1), at(sorted, bounding.upper - 1)] : null,
    clustered: clusteredOf(values, ends, level),
  };
}

function clusteredOf(
  values: readonly ValueOf[],
  ends: MedianEnds,
  level: number,
): MedianTally["clustered"] {
  const clusters = [...grouped(values, ({ patient }) => patient).values()];
  const found =
    ends.reach(clusters.length) === undefined
      ? undefined
      : clusteredMedianInterval(
          clusters.map((some) => some.map(({ value }) => value)),
          level,
        );
  if (!found) return null;
  const { lower, upper, designEffect } = found;
  return { lower, upper, designEffect, clusters: clusters.length };
}

function quantile(sorted: readonly number[], p: number): number {
  const place = (sorted.length - 1) * p;
  const below = at(sorted, Math.floor(place));
  const above = at(sorted, Math.ceil(place));
  return below + (above - below) * (place - Math.floor(place));
}

function at(sorted: readonly number[], place: number): number {
  const value = sorted[place];
  if (value === undefined) throw new RangeError(`no value at place ${place} of ${sorted.length}`);
  return value;
}
