import type { MedianEnds, MedianTally } from "../tally";
import type { Alike, MonthUnits } from "./alike";
import type { PatientSums, Patients } from "./patients";

/** Units of a month that are alike. */
export type Part = readonly [month: MonthUnits, alike: Alike];

/** The recorded values of units that are not left out, each with the number of its patient. */
export type Values = { readonly values: Float64Array; readonly patients: Int32Array };

/** Gathers the values of parts. */
export function valuesOf(parts: readonly Part[], patients: Patients): Values {
  const kept = parts.filter(([, alike]) => alike.excluded === null && alike.values !== null);
  const size = kept.reduce((total, [, alike]) => total + (alike.values?.length ?? 0), 0);
  const values = new Float64Array(size);
  const of = new Int32Array(size);
  let n = 0;
  for (const [month, alike] of kept) {
    const numbers = patients.of(month);
    const [visits, all] = [alike.visits, alike.values ?? []];
    for (let place = 0; place < all.length; place += 1) {
      const value = all[place];
      if (value === null || value === undefined) continue;
      values[n] = value;
      of[n] = numbers[visits[place] as number] ?? -1;
      n += 1;
    }
  }
  return { values: values.subarray(0, n), patients: of.subarray(0, n) };
}

type Order = Pick<MedianTally, "n" | "median" | "quartiles" | "bounds" | "clustered">;

/**
 * Median and quartiles (type 7), the order statistics that bound the median's interval, and the ends that honour the patient
 * (Woodruff 1952, JASA 47:635): as `lib/store/figures/woodruff-sql` has them, which tests hold this to. Or how many there are alone.
 */
export function orderOf(
  { values, patients }: Values,
  ends: MedianEnds,
  sums: PatientSums,
  countsAlone = false,
): Order {
  const n = values.length;
  if (n === 0 || countsAlone)
    return { n, median: null, quartiles: null, bounds: null, clustered: null };
  const sorted = Float64Array.from(values).sort();
  const median = quantile(sorted, 0.5);
  const ranks = ends.ranks(n);
  const bounds = ranks && ([sorted[ranks.lower - 1], sorted[ranks.upper - 1]] as const);
  for (let place = 0; place < n; place += 1)
    sums.add(patients[place] ?? -1, (values[place] ?? 0) <= median ? 1 : 0, 1);
  return {
    n,
    median,
    quartiles: [quantile(sorted, 0.25), quantile(sorted, 0.75)],
    bounds: bounds?.[0] === undefined || bounds[1] === undefined ? null : [bounds[0], bounds[1]],
    clustered: clusteredOf(sorted, ends, sums),
  };
}

function clusteredOf(
  sorted: Float64Array,
  ends: MedianEnds,
  gathered: PatientSums,
): MedianTally["clustered"] {
  const sums = gathered.take();
  const reach = ends.reach(sums?.clusters ?? 0);
  if (!sums || reach === undefined || sums.clusters < 2) return null;
  const { clusters, events, units } = sums;
  const share = events / units;
  if (share >= 1) return null;
  const spread =
    sums.eventsSquared - 2 * share * sums.eventsByUnits + share * share * sums.unitsSquared;
  const variance = Math.max(0, ((clusters / (clusters - 1)) * spread) / (units * units));
  const independent = (share * (1 - share)) / units;
  const span = reach * Math.sqrt(Math.max(variance, independent));
  if (span >= 0.5) return null;
  return {
    lower: quantile(sorted, 0.5 - span),
    upper: quantile(sorted, 0.5 + span),
    designEffect: variance / independent,
    clusters,
  };
}

/** The type-7 quantile of ordered values. */
function quantile(sorted: Float64Array, p: number): number {
  const place = (sorted.length - 1) * p;
  const below = Math.floor(place);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[Math.min(sorted.length - 1, below + 1)] ?? low;
  return low + (place - below) * (high - low);
}
