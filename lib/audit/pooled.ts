import type { Figure, RateFigure } from "./figure";

/** All clinicians that are shown, taken together. */
export type Pooled = {
  readonly events: number;
  readonly units: number;
  readonly rate: number;
  /** How many times the variance is that of independent units; 1 where it cannot be told. */
  readonly designEffect: number;
};

/**
 * The pooled rate of the clinicians shown for a measure, with the design effect of the whole; undefined without units.
 * Who has recorded too little to be judged is no part of it, for what is not recorded counts as not met and would make
 * the others look better than all; where nobody can be judged it is that of everyone.
 */
export function pooledOf(figures: readonly Figure[], measure: string): Pooled | undefined {
  return poolsOf(figures).get(measure);
}

/** The same of each measure that has any, in one pass through the figures. */
export function poolsOf(figures: readonly Figure[]): Map<string, Pooled> {
  const rates = new Map<string, RateFigure[]>();
  for (const figure of figures) {
    if (figure.kind !== "rate") continue;
    const same = rates.get(figure.measure);
    if (same) same.push(figure);
    else rates.set(figure.measure, [figure]);
  }
  const pools = new Map<string, Pooled>();
  for (const [measure, some] of rates) {
    const pooled = pooledRates(some);
    if (pooled) pools.set(measure, pooled);
  }
  return pools;
}

function pooledRates(rates: readonly RateFigure[]): Pooled | undefined {
  const everyone = rates.filter((figure) => figure.about.kind === "clinician");
  const judged = everyone.filter((figure) => figure.inTheseRecords !== "not assessable");
  const clinicians = judged.some((figure) => figure.denominator > 0) ? judged : everyone;
  const whole = rates.find((figure) => figure.about.kind === "group");
  const events = clinicians.reduce((sum, figure) => sum + figure.numerator, 0);
  const units = clinicians.reduce((sum, figure) => sum + figure.denominator, 0);
  if (units === 0) return undefined;
  const designEffect = whole?.clustered?.designEffect ?? 1;
  return { events, units, rate: events / units, designEffect };
}
