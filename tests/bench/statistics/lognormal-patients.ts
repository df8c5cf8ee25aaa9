import { canalsOfAPatient } from "./beta-binomial-patients";

/** The true median, in seconds, and the standard deviation of the logarithm: as irrigation times may be. */
const MEDIAN = 240;
const LOG_DEVIATION = 0.4;

export const trueMedian = MEDIAN;

/**
 * Draws the values of a patient's 2 to 4 canals: lognormal, a patient's effect and a rest, so that the logarithms of two
 * canals of one patient are correlated by `likeness`.
 */
export function lognormalPatients(likeness: number, random: () => number): () => number[] {
  return () => {
    const units = canalsOfAPatient[Math.floor(random() * canalsOfAPatient.length)] as number;
    const own = Math.sqrt(likeness) * normal(random);
    return Array.from({ length: units }, () => {
      const rest = Math.sqrt(1 - likeness) * normal(random);
      return MEDIAN * Math.exp(LOG_DEVIATION * (own + rest));
    });
  };
}

/** A standard normal number (Box & Muller 1958, Ann Math Stat 29:610). */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}
