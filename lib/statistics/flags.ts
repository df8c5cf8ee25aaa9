import { requireEventsAmong } from "@/lib/statistics/count-and-level";
import { benjaminiHochberg } from "@/lib/statistics/false-discovery";
import { tailProbability } from "@/lib/statistics/tail-probability";

/** One figure of a page: a clinician's counts, and what the whole of those shown had. */
export type FigureToFlag = {
  events: number;
  units: number;
  /** pooled rate of all shown, the person included, from 0 to 1 */
  theta: number;
  /** pooled design effect; under 1 it counts as 1 */
  designEffect: number;
};

/** The adjusted probabilities under which a figure is looked at, and looked at first. */
export type FlagLevels = { look: number; lookFirst: number };

/** A figure's place: `p` by mid-P, `adjusted` over the page, and the tier that it reaches. */
export type Flag = {
  p: number;
  adjusted: number;
  direction: "higher" | "lower";
  tier: "look" | "look-first" | null;
};

// Where nobody differs, at most 5 pages in 100 show a look and 2 in 1,000 a look first; the two are
// what lies outside the 95 % and 99.8 % limits of a funnel plot (Spiegelhalter 2005).
const LEVELS: FlagLevels = { look: 0.05, lookFirst: 0.002 };

// The share that plain 95 % limits leave outside by their definition.
const OUTSIDE_95 = 0.05;

/**
 * Which figures of a page are worth a look: mid-P tails (see `tailProbability`) of counts divided
 * by the design effect, adjusted over all figures of the page after Benjamini & Hochberg 1995. Both
 * directions are flagged. Where nobody differs, the share of pages with any flag of a tier is at
 * most its level.
 * @param figures all those of the page; one without units is not counted and answered with null
 * @param levels strictly between 0 and 1, `lookFirst` not over `look`
 * @returns `m` figures counted; `chance`, how many of them one would expect outside plain 95 %
 *   limits where nobody differs, 0.05·m; and the flags in the order given
 * @throws RangeError for counts, rates, design effects or levels that cannot be
 */
export function flags(
  figures: readonly FigureToFlag[],
  levels: FlagLevels = LEVELS,
): { m: number; chance: number; figures: (Flag | null)[] } {
  requireLevels(levels);
  const tails = figures.map(tailOf);
  const counted = tails.filter((tail) => tail !== null);
  const adjusted = benjaminiHochberg(counted.map((tail) => tail.p)).values();
  return {
    m: counted.length,
    chance: OUTSIDE_95 * counted.length,
    figures: tails.map((tail) => {
      if (tail === null) return null;
      const level = adjusted.next().value as number;
      return {
        p: tail.p,
        adjusted: level,
        direction: tail.upper < tail.lower ? "higher" : "lower",
        tier: tierOf(level, levels),
      };
    }),
  };
}

function tailOf({ events, units, theta, designEffect }: FigureToFlag) {
  requireEventsAmong(events, units);
  if (!(designEffect >= 0 && Number.isFinite(designEffect))) {
    throw new RangeError(`a design effect is a finite number, 0 or more: ${designEffect}`);
  }
  const narrowed = Math.max(1, designEffect);
  const tail = tailProbability(events / narrowed, units / narrowed, theta);
  return units === 0 ? null : tail;
}

function tierOf(adjusted: number, levels: FlagLevels): Flag["tier"] {
  if (adjusted < levels.lookFirst) return "look-first";
  return adjusted < levels.look ? "look" : null;
}

function requireLevels({ look, lookFirst }: FlagLevels): void {
  if (!(lookFirst > 0 && lookFirst <= look && look < 1)) {
    throw new RangeError(`levels run 0 < look first ≤ look < 1: ${lookFirst}, ${look}`);
  }
}
