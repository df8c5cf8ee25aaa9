import gammaln from "@stdlib/math-base-special-gammaln";

/**
 * P(X ≥ events) of a Poisson count with a mean: the series of the incomplete gamma function, all of whose terms are
 * positive (Abramowitz & Stegun 6.5.29). It stands here because the distribution functions of @stdlib are wrong in the
 * fourth digit for a thousand events and more (met against R: poisson.test).
 * @param events whole, 0 or more
 * @param mean 0 or more, however large
 */
export function poissonAtLeast(events: number, mean: number): number {
  if (events === 0) return 1;
  let term = 1;
  let sum = 1;
  for (let more = 1; term > sum * Number.EPSILON; more += 1) {
    term *= mean / (events + more);
    sum += term;
  }
  // So far over the events that its terms run out of doubles: certain to the last digit.
  if (sum === Number.POSITIVE_INFINITY) return 1;
  return sum * Math.exp(events * Math.log(mean) - mean - gammaln(events + 1));
}
