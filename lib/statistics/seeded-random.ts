// Park & Miller 1988, Commun ACM 31:1192, with the multiplier of their 1993 reply (36:108); the
// generator minstd_rand of the C++ standard.
const MULTIPLIER = 48_271;
const MODULUS = 2_147_483_647;

/**
 * A small random generator that repeats itself from a seed, so that a simulated number can be
 * computed again. Good enough for resampling; not for secrets.
 * @param seed whole, from 1 to 2,147,483,646
 * @returns a function that gives the next number strictly between 0 and 1
 * @throws RangeError for a seed that cannot be
 */
export function seededRandom(seed: number): () => number {
  if (!(Number.isInteger(seed) && seed >= 1 && seed < MODULUS)) {
    throw new RangeError(`a seed is whole, over 0 and under ${MODULUS}: ${seed}`);
  }
  let state = seed;
  return () => {
    // The remainder, in exact arithmetic (all stays under 2^53) and faster than the operator.
    const product = state * MULTIPLIER;
    state = product - Math.floor(product / MODULUS) * MODULUS;
    return state / MODULUS;
  };
}
