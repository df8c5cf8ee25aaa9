/** What was counted of one patient. */
export type Patient = { events: number; units: number };

// Two to four canals, each as often as the others: what one treated tooth mostly has.
export const canalsOfAPatient: readonly number[] = [2, 3, 4];

/**
 * Draws patients of 2 to 4 canals whose events are beta-binomial: the rate of each patient is its own, and two canals
 * of one patient are correlated by `likeness`, the intra-cluster correlation. At 0 all canals are independent.
 * One uniform number makes one patient, by the table of all that a patient can be.
 * @param rate of events over all patients
 * @param likeness from 0, under 1
 */
export function betaBinomialPatients(
  rate: number,
  likeness: number,
  random: () => number,
): () => Patient {
  const table = canalsOfAPatient.flatMap((units) =>
    Array.from({ length: units + 1 }, (_, events) => ({
      patient: { events, units },
      share: countProbability(events, units, rate, likeness) / canalsOfAPatient.length,
    })),
  );
  // The likeliest first, so that most draws end soon.
  table.sort((one, other) => other.share - one.share);
  const last = table.at(-1)?.patient as Patient;
  return () => {
    let left = random();
    for (const { patient, share } of table) {
      left -= share;
      if (left < 0) return patient;
    }
    return last;
  };
}

/** P(events of units), beta-binomial in its product form, which holds at likeness 0 as well. */
function countProbability(events: number, units: number, rate: number, likeness: number): number {
  const theta = likeness / (1 - likeness);
  let probability = 1;
  for (let j = 0; j < events; j += 1) {
    probability *= ((rate + j * theta) * (units - j)) / (j + 1);
  }
  for (let j = 0; j < units - events; j += 1) probability *= 1 - rate + j * theta;
  for (let j = 0; j < units; j += 1) probability /= 1 + j * theta;
  return probability;
}
