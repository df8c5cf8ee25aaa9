import type { Ends } from "@/lib/statistics/interval";

/**
 * Wilson's score limits in their inner form, open to an effective number of units and to a
 * t quantile (Wilson 1927, JASA 22:209; Newcombe 1998, Stat Med 17:857, method 3).
 *
 * The lower end is written as the product of the two roots over the upper one, for the textbook
 * difference cancels for rare events and leaves [0, 1] by rounding. Exactly 0 at 0 and 1 at 1.
 * @param proportion from 0 to 1
 * @param units number of units, over 0; need not be whole
 * @param quantile of the normal or t distribution, 0 or more
 * @throws RangeError when an argument cannot be
 */
export function wilsonEnds(proportion: number, units: number, quantile: number): Ends {
  if (!(proportion >= 0 && proportion <= 1)) {
    throw new RangeError(`a proportion lies between 0 and 1: ${proportion}`);
  }
  if (!(units > 0 && Number.isFinite(units))) {
    throw new RangeError(`the number of units must be over 0: ${units}`);
  }
  if (!(quantile >= 0 && Number.isFinite(quantile))) {
    throw new RangeError(`the quantile must be 0 or more: ${quantile}`);
  }
  const share = quantile ** 2 / units;
  const root = Math.sqrt((proportion * (1 - proportion) + share / 4) * share);
  const sum = proportion + share / 2 + root;
  return {
    lower: proportion === 0 ? 0 : Math.min(proportion, proportion ** 2 / sum),
    upper: proportion === 1 ? 1 : Math.min(1, sum / (1 + share)),
  };
}
