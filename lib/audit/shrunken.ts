import {
  type BetaBinomialFit,
  betaBinomialFit,
  reliability,
  shrunkenRate,
} from "@/lib/statistics/shrinkage";
import type { RateFigure } from "./figure";

/** A rate drawn towards that of all shown, by as much as its number of units leaves to chance. */
export type Shrunken = {
  readonly figure: RateFigure;
  readonly rate: number;
  /** Share of the differences between clinicians, at this number of units, that is no chance; 0 to 1. */
  readonly reliability: number;
};

/** All clinicians' shrunken rates; `extra` says whether they vary by more than chance at all. */
export type AllShrunken = {
  readonly extra: boolean;
  readonly rates: readonly Shrunken[];
};

/** To be shown beside the plain rates and never instead of them; undefined where fewer than two have units. */
export function shrunkenOf(figures: readonly RateFigure[]): AllShrunken | undefined {
  const counted = figures.filter((figure) => figure.denominator > 0);
  if (counted.length < 2) return undefined;
  const fit: BetaBinomialFit | undefined = betaBinomialFit(
    counted.map(({ numerator, denominator }) => ({ events: numerator, units: denominator })),
  );
  if (!fit) return undefined;
  return {
    extra: fit.theta > 0,
    rates: counted.map((figure) => ({
      figure,
      rate: shrunkenRate(figure.numerator, figure.denominator, fit),
      reliability: reliability(figure.denominator, fit),
    })),
  };
}
