import { requireEventsAmong } from "@/lib/statistics/count-and-level";
import type { Interval } from "@/lib/statistics/interval";
import { poissonExact } from "@/lib/statistics/rate-interval";

/** Observed ÷ expected. */
export type StandardisedRatio = { ratio: number; interval: Interval };

/**
 * Observed ÷ expected events with the exact interval of the observed over the expected, taken as known (Ulm 1990, Am J
 * Epidemiol 131:373; Breslow & Day 1987, ch. 2).
 * @param observed whole, 0 or more
 * @param expected 0 or more; 0 has no ratio
 * @param level such as 0.95
 * @throws RangeError for counts or a level that cannot be
 */
export function standardisedRatio(
  observed: number,
  expected: number,
  level: number,
): StandardisedRatio | undefined {
  const interval = poissonExact(observed, expected, level);
  return interval && { ratio: observed / expected, interval };
}

/** One stratum: a person's units, and the events and units of the reference, the person included. */
export type ReferredStratum = {
  readonly units: number;
  readonly referenceEvents: number;
  readonly referenceUnits: number;
};

/** What is expected of the strata used; those left out leave the observed as well. */
export type Expected = {
  expected: number;
  /** Per stratum, in the order given. */
  used: boolean[];
  leftOut: { strata: number; units: number };
};

// Notes on statistics: a rate from fewer is too unsure to expect anything of it.
const LEAST_REFERENCE_UNITS = 20;

/**
 * The events expected of a person at the rates of the reference, stratum by stratum (indirect standardisation, Breslow &
 * Day 1987, ch. 2). A stratum with under 20 reference units, or with nobody else's, is left out and counted; one without
 * units of the person is neither.
 * @throws RangeError for counts that cannot be, or more units of the person than of the reference
 */
export function expectedFrom(strata: readonly ReferredStratum[]): Expected {
  for (const { units, referenceEvents, referenceUnits } of strata) {
    requireEventsAmong(referenceEvents, referenceUnits);
    requireEventsAmong(units, referenceUnits);
  }
  const used = strata.map(
    ({ units, referenceUnits }) =>
      units >= 1 && referenceUnits >= LEAST_REFERENCE_UNITS && referenceUnits > units,
  );
  const left = strata.filter(({ units }, place) => units >= 1 && !used[place]);
  return {
    expected: strata.reduce(
      (sum, { units, referenceEvents, referenceUnits }, place) =>
        sum + (used[place] ? (units * referenceEvents) / referenceUnits : 0),
      0,
    ),
    used,
    leftOut: { strata: left.length, units: left.reduce((sum, { units }) => sum + units, 0) },
  };
}
