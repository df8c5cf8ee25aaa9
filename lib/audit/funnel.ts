import { funnelLimits, overdispersion } from "@/lib/statistics/funnel";
import type { RateFigure } from "./figure";
import type { Pooled } from "./pooled";

/** The limits that chance draws around the pooled rate at a number of units; raw, to be clipped when drawn. */
export type FunnelLimits = {
  readonly units: number;
  readonly lower998: number;
  readonly lower95: number;
  readonly upper95: number;
  readonly upper998: number;
};

export type Funnel = {
  readonly limits: readonly FunnelLimits[];
  /** How much more the rates vary than chance has it; null where that cannot be told. */
  readonly overdispersion: { readonly phi: number; readonly tau2: number } | null;
};

const steps = 100;
const tails = { lower998: 0.001, lower95: 0.025, upper95: 0.975, upper998: 0.999 } as const;

/** The funnel around a pooled rate, out to the largest number of units shown; likeness within patients narrows no line. */
export function funnelOf(figures: readonly RateFigure[], pooled: Pooled): Funnel {
  const most = Math.max(0, ...figures.map((figure) => figure.denominator));
  const step = Math.max(1, Math.ceil(most / steps));
  const places = Array.from({ length: Math.ceil(most / step) }, (_, place) =>
    Math.min(most, (place + 1) * step),
  );
  const found = overdispersion(
    figures.map(({ numerator, denominator }) => ({ events: numerator, units: denominator })),
  );
  return {
    limits: places.flatMap((units) => limitsAt(units, pooled)),
    overdispersion: found ? { phi: found.phi, tau2: found.tau2 } : null,
  };
}

function limitsAt(units: number, pooled: Pooled): FunnelLimits[] {
  const effective = Math.max(1, Math.round(units / Math.max(1, pooled.designEffect)));
  const at = (tail: number) => funnelLimits(pooled.rate, effective, tail);
  const [lower998, lower95] = [at(tails.lower998), at(tails.lower95)];
  const [upper95, upper998] = [at(tails.upper95), at(tails.upper998)];
  if (lower998 === undefined || lower95 === undefined) return [];
  if (upper95 === undefined || upper998 === undefined) return [];
  return [{ units, lower998, lower95, upper95, upper998 }];
}
