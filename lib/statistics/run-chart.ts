import binomialQuantile from "@stdlib/stats-base-dists-binomial-quantile";

/** What a run chart tells; limits are undefined under 10 useful points. */
export type RunSignals = {
  /** points that are there and not on the centre line */
  useful: number;
  longestRun: number;
  longestRunLimit: number | undefined;
  crossings: number;
  crossingsLimit: number | undefined;
  /** the longest run is over its limit */
  longRun: boolean;
  /** the centre line is crossed less often than its limit */
  fewCrossings: boolean;
  /** either of the two */
  signal: boolean;
};

const FEWEST_USEFUL = 10;

/**
 * The two rules of Anhøj & Olesen 2014, PLoS ONE 9:e113825, for a shift over n useful points: a run
 * on one side longer than log₂(n) + 3, rounded, or fewer crossings of the centre line than the 5 %
 * quantile of the binomial (n − 1, ½). Gaps and points on the centre line are skipped: they neither
 * count nor end a run. Under 10 useful points there is no signal (common practice).
 * @param values in order of time, null for a period that is missing
 * @param centre the line, usually the median of a baseline
 * @throws RangeError for a value or a centre that is not finite
 */
export function runSignals(values: readonly (number | null)[], centre: number): RunSignals {
  const sides = sidesOf(values, centre);
  const useful = sides.length;
  let crossings = 0;
  let run = 0;
  let longestRun = 0;
  let before: boolean | undefined;
  for (const side of sides) {
    if (before === undefined || side === before) run += 1;
    else {
      crossings += 1;
      run = 1;
    }
    longestRun = Math.max(longestRun, run);
    before = side;
  }
  const told = useful >= FEWEST_USEFUL;
  const longestRunLimit = told ? Math.round(Math.log2(useful) + 3) : undefined;
  const crossingsLimit = told ? binomialQuantile(0.05, useful - 1, 0.5) : undefined;
  const longRun = longestRunLimit !== undefined && longestRun > longestRunLimit;
  const fewCrossings = crossingsLimit !== undefined && crossings < crossingsLimit;
  return {
    useful,
    longestRun,
    longestRunLimit,
    crossings,
    crossingsLimit,
    longRun,
    fewCrossings,
    signal: longRun || fewCrossings,
  };
}

/** Whether each useful point lies above the centre. */
function sidesOf(values: readonly (number | null)[], centre: number): boolean[] {
  if (!Number.isFinite(centre)) throw new RangeError(`the centre must be finite: ${centre}`);
  const sides: boolean[] = [];
  for (const value of values) {
    if (value === null) continue;
    if (!Number.isFinite(value)) throw new RangeError(`a value must be finite: ${value}`);
    if (value !== centre) sides.push(value > centre);
  }
  return sides;
}
