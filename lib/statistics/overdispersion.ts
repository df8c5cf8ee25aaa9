import { requireEventsAmong } from "@/lib/statistics/count-and-level";

/** What varies between units beyond chance; `z` in the order given, null for one without units. */
export type Overdispersion = { theta: number; z: (number | null)[]; phi: number; tau2: number };

/**
 * How much more the rates of several clinicians (or practices) vary than chance has it
 * (Spiegelhalter 2005, Stat Med 24:1185), z not winsorised: θ the pooled rate,
 * z = (x − nθ)/√(nθ(1 − θ)), φ = Σz²/I (about 1 where only chance is at work), and
 * τ² = max(0, (Iφ − I + 1)/(Σw − Σw²/Σw)) with w = n/(θ(1 − θ)), the variance between them on the
 * scale of rates (DerSimonian & Laird's moment estimate). To be shown; limits are not widened by it.
 * @param units events and units of each; one with 0 units is not counted among the I
 * @returns undefined where fewer than two have units, or nobody or everybody had the event
 * @throws RangeError for counts that cannot be
 */
export function overdispersion(
  units: readonly { events: number; units: number }[],
): Overdispersion | undefined {
  for (const one of units) requireEventsAmong(one.events, one.units);
  const counted = units.filter((one) => one.units !== 0);
  const total = sum(counted.map((one) => one.units));
  const theta = sum(counted.map((one) => one.events)) / total;
  const variance = theta * (1 - theta);
  if (counted.length < 2 || variance === 0) return undefined;
  const z = units.map((one) =>
    one.units === 0 ? null : (one.events - one.units * theta) / Math.sqrt(one.units * variance),
  );
  const squares = sum(z.map((value) => (value ?? 0) ** 2));
  const weights = counted.map((one) => one.units / variance);
  const weight = sum(weights);
  const spread = weight - sum(weights.map((value) => value ** 2)) / weight;
  return {
    theta,
    z,
    phi: squares / counted.length,
    tau2: Math.max(0, (squares - counted.length + 1) / spread),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
