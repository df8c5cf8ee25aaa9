import { cusumWeight } from "@/lib/statistics/cusum-weight";

/**
 * A Bernoulli CUSUM over canals in visit order: S = max(0, S + weight), a signal where S reaches the
 * limit, after which it begins at 0 again (Steiner 2000, Biostatistics 1:441).
 * @param outcomes 1 where the event happened, else 0, in order
 * @param baseline the probability expected, fixed beforehand: one for all, or one for each outcome
 * @param oddsRatio the worsening looked for, over 1
 * @param limit over 0; see `cusumLimit`
 * @returns `path`, S after each canal as it stood before any return to 0, so that a signal shows
 *   at or over the limit; `signals`, the indexes of the canals that gave one
 * @throws RangeError for numbers that cannot be, or another count of baselines than of outcomes
 */
export function bernoulliCusum(
  outcomes: readonly (0 | 1)[],
  baseline: number | readonly number[],
  oddsRatio: number,
  limit: number,
): { path: number[]; signals: number[] } {
  if (!(limit > 0 && Number.isFinite(limit))) {
    throw new RangeError(`the limit must be over 0: ${limit}`);
  }
  if (typeof baseline !== "number" && baseline.length !== outcomes.length) {
    throw new RangeError(`${baseline.length} baselines for ${outcomes.length} outcomes`);
  }
  const signals: number[] = [];
  let sum = 0;
  const path = outcomes.map((outcome, index) => {
    const expected = typeof baseline === "number" ? baseline : (baseline[index] as number);
    const reached = Math.max(0, sum + cusumWeight(outcome, expected, oddsRatio));
    if (reached >= limit) signals.push(index);
    sum = reached >= limit ? 0 : reached;
    return reached;
  });
  return { path, signals };
}
