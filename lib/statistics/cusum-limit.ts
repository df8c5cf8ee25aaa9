import { type CusumCanal, type CusumCycles, cusumCycles } from "@/lib/statistics/cusum-cycles";

/** What the simulation of a limit needs. */
export type CusumLimitRequest = {
  /** past visits, canals in order, each with what happened and what was expected of it */
  visits: readonly (readonly CusumCanal[])[];
  /** the worsening looked for, over 1 */
  oddsRatio: number;
  /** canals wanted on average from 0 to a signal where nothing changes */
  averageRun: number;
  /** of the random generator, whole, from 1 to 2,147,483,646 */
  seed: number;
  /** canals to simulate; 500 average runs when left out */
  canals?: number;
};

/** A limit, the average run that it has in the simulation, and how exactly that is known. */
export type CusumLimit = {
  limit: number;
  averageRun: number;
  standardError: number;
  signals: number;
  simulated: number;
};

const RUNS = 500;
const ROUGH_RUNS = 25;

/**
 * The limit of a Bernoulli CUSUM with which one false alarm comes in `averageRun` canals, found by
 * resampling whole visits with replacement, outcomes as they were, so that the canals of one visit
 * keep their likeness. The same request gives the same answer.
 *
 * One long stream answers for all limits up to a cap: cut into cycles from 0 to 0 or the cap, the average
 * run at a limit is the canals up to the reaching of the limit or the end of each cycle, summed,
 * over the cycles that reach it (Page 1954, Biometrika 41:100). The standard error is that average
 * over the root of the signals, for their number is about Poisson. The limit lies halfway between
 * the heights reached where the average first is at least the one wanted.
 * @returns undefined where no event is among the visits, or the simulation was too short to tell
 * @throws RangeError for numbers that cannot be, a visit without canals, or fewer canals to
 *   simulate than the average run wanted
 */
export function cusumLimit(request: CusumLimitRequest): CusumLimit | undefined {
  const { visits, oddsRatio, averageRun, seed } = request;
  const canals = request.canals ?? RUNS * averageRun;
  requireRequest(visits, averageRun, canals);
  if (!visits.flat().some((canal) => canal.outcome === 1)) return undefined;
  const step = Math.log(oddsRatio);
  const search = (length: number, from: number): CusumLimit | undefined => {
    for (let cap = from; ; cap += cap) {
      const cycles = cusumCycles(visits, oddsRatio, seed, length, cap);
      const found = sweep(cycles, averageRun, cap);
      if (found !== undefined || !cycles.height.some((height) => height >= cap)) return found;
    }
  };
  // The nearer the cap, the fewer canals go by after a signal: so it is sought roughly at first.
  const rough = search(Math.min(canals, ROUGH_RUNS * averageRun), step);
  return search(canals, rough === undefined ? step : rough.limit + step);
}

/**
 * Raises the limit past one height after another, keeping count of the cycles that still signal and
 * of the canals that follow a signal in its cycle, which are no part of a run. Undefined where the
 * limit is over the cap.
 */
function sweep(cycles: CusumCycles, wanted: number, cap: number): CusumLimit | undefined {
  const { simulated, cycle, height, after } = cycles;
  const opens = (i: number) => cycle[i] !== cycle[i - 1];
  let signals = 0;
  let following = 0;
  for (const [i, canals] of after.entries()) {
    if (!opens(i)) continue;
    signals += 1;
    following += canals;
  }
  let passed = 0;
  for (const i of rising(height)) {
    const here = height[i] as number;
    const average = (simulated - following) / signals;
    if (here > passed && average >= wanted) {
      const standardError = average / Math.sqrt(signals);
      return { limit: (passed + here) / 2, averageRun: average, standardError, signals, simulated };
    }
    if (here >= cap) return undefined;
    passed = here;
    following -= after[i] as number;
    if (opens(i + 1)) signals -= 1;
    else following += after[i + 1] as number;
  }
  return undefined;
}

function rising(height: readonly number[]): number[] {
  const order = [...height.keys()];
  return order.sort((a, b) => (height[a] as number) - (height[b] as number));
}

function requireRequest(
  visits: CusumLimitRequest["visits"],
  averageRun: number,
  canals: number,
): void {
  if (visits.some((visit) => visit.length === 0)) throw new RangeError("a visit has no canals");
  if (!(averageRun >= 1 && canals >= averageRun && Number.isFinite(canals))) {
    throw new RangeError(`no average run of ${averageRun} can be found in ${canals} canals`);
  }
}
