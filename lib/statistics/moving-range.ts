/**
 * The mean of the distances between neighbours, unscreened: no range is taken across a gap, and
 * none is left out for being large.
 * @param values in order of time, null for a gap
 * @returns undefined where no two stand beside each other
 */
export function meanMovingRange(values: readonly (number | null)[]): number | undefined {
  let ranges = 0;
  let sum = 0;
  let before: number | null = null;
  for (const value of values) {
    if (value !== null && before !== null) {
      sum += Math.abs(value - before);
      ranges += 1;
    }
    before = value;
  }
  return ranges === 0 ? undefined : sum / ranges;
}
