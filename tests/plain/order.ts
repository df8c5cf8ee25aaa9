import type { MedianRanks, MedianTally } from "@/lib/measures/tally";

/** Median, quartiles (type 7 of Hyndman & Fan 1996) and the values at the ranks that bound the median. */
export function order(
  values: readonly number[],
  ranks: MedianRanks,
): Pick<MedianTally, "n" | "median" | "quartiles" | "bounds"> {
  const sorted = values.toSorted((a, b) => a - b);
  const n = sorted.length;
  if (n === 0) return { n, median: null, quartiles: null, bounds: null };
  const bounding = ranks(n);
  return {
    n,
    median: quantile(sorted, 0.5),
    quartiles: [quantile(sorted, 0.25), quantile(sorted, 0.75)],
    bounds: bounding ? [at(sorted, bounding.lower - 1), at(sorted, bounding.upper - 1)] : null,
  };
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
