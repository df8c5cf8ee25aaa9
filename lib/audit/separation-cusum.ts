import { bernoulliCusum } from "@/lib/statistics/bernoulli-cusum";
import { cusumLimit } from "@/lib/statistics/cusum-limit";
import { betaBinomialFit, shrunkenRate } from "@/lib/statistics/shrinkage";

/** A canal's case and whether an instrument separated in it. */
export type CanalOf = { readonly case: string; readonly event: boolean };

/** Visits that are alike, and how many. */
export type VisitsAlike = { readonly canals: readonly CanalOf[]; readonly visits: number };

/** A running sum over a clinician's canals that rises with each separation and falls with each canal without one. */
export type SeparationCusum = {
  /** After each canal, as it stood before any return to 0. */
  readonly path: readonly number[];
  /** Places of the canals that gave a signal. */
  readonly signals: readonly number[];
  readonly limit: number;
  /** Canals between false alarms with this limit in the simulation, and how exactly that is known. */
  readonly averageRun: number;
  readonly standardError: number;
  readonly baseline: { readonly events: number; readonly canals: number };
  /** Expected by case; else everyone's rate for every canal, as the cases did not differ beyond chance. */
  readonly byCase: boolean;
};

/** The odds at which a separation is looked for: twice those of the baseline. */
export const oddsRatio = 2;
/** One false alarm in so many years of the person's own volume. */
export const falseAlarmYears = 10;
// Any seed would do; a fixed one gives the same limit each time.
const seed = 20_261_125;

/**
 * The Bernoulli CUSUM of a clinician's canals (Steiner 2000, Biostatistics 1:441), expected by case from everyone's
 * baseline year; rates of small cells are drawn towards everyone's. Undefined where the baseline has no separation
 * or nothing else.
 * @param canals in the order of treatment
 * @param baseline everyone's visits of the year before, outcomes as they were
 * @param yearly canals that the clinician treats in a year
 */
export function separationCusum(
  canals: readonly CanalOf[],
  baseline: readonly VisitsAlike[],
  yearly: number,
): SeparationCusum | undefined {
  const { expected, events, canals: counted, byCase } = expectedByCase(baseline);
  if (events === 0 || events === counted || canals.length === 0) return undefined;
  const visits = baseline.flatMap((alike) => {
    const visit = alike.canals.map((canal) => ({
      outcome: outcomeOf(canal),
      baseline: expected(canal.case),
    }));
    return Array.from({ length: alike.visits }, () => visit);
  });
  const averageRun = Math.max(1, Math.round(yearly * falseAlarmYears));
  const limit = cusumLimit({ visits, oddsRatio, averageRun, seed });
  if (!limit) return undefined;
  const rates = canals.map((canal) => expected(canal.case));
  const { path, signals } = bernoulliCusum(canals.map(outcomeOf), rates, oddsRatio, limit.limit);
  return {
    path,
    signals,
    limit: limit.limit,
    averageRun: limit.averageRun,
    standardError: limit.standardError,
    baseline: { events, canals: counted },
    byCase,
  };
}

function expectedByCase(baseline: readonly VisitsAlike[]) {
  const cells = new Map<string, { events: number; units: number }>();
  for (const { canals, visits } of baseline) {
    for (const canal of canals) {
      const cell = cells.get(canal.case) ?? { events: 0, units: 0 };
      cell.events += canal.event ? visits : 0;
      cell.units += visits;
      cells.set(canal.case, cell);
    }
  }
  const counted = [...cells.values()];
  const events = counted.reduce((sum, cell) => sum + cell.events, 0);
  const canals = counted.reduce((sum, cell) => sum + cell.units, 0);
  const fit = counted.length > 1 && events > 0 ? betaBinomialFit(counted) : undefined;
  const byCase = fit !== undefined && fit.theta > 0;
  const expected = (name: string) => {
    const cell = cells.get(name) ?? { events: 0, units: 0 };
    return byCase ? shrunkenRate(cell.events, cell.units, fit) : events / canals;
  };
  return { expected, events, canals, byCase };
}

function outcomeOf(canal: CanalOf): 0 | 1 {
  return canal.event ? 1 : 0;
}
