import { requireInnerProbability } from "@/lib/statistics/probability";

/**
 * What one unit adds to a Bernoulli CUSUM: x·ln OR − ln(1 + p(OR − 1)), the log of how much likelier
 * the outcome is where the odds are OR times those of the baseline (Steiner 2000, Biostatistics
 * 1:441).
 * @param outcome 1 where the event happened, else 0
 * @param baseline the probability expected of this unit, strictly between 0 and 1
 * @param oddsRatio the worsening looked for, over 1 (2: doubled odds)
 * @throws RangeError for numbers that cannot be
 */
export function cusumWeight(outcome: 0 | 1, baseline: number, oddsRatio: number): number {
  requireInnerProbability(baseline, "the baseline");
  if (!(oddsRatio > 1 && Number.isFinite(oddsRatio))) {
    throw new RangeError(`the odds ratio must be over 1: ${oddsRatio}`);
  }
  if (outcome !== 0 && outcome !== 1) throw new RangeError(`an outcome is 0 or 1: ${outcome}`);
  return outcome * Math.log(oddsRatio) - Math.log1p(baseline * (oddsRatio - 1));
}
