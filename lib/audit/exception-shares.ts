import { clopperPearson } from "@/lib/statistics/proportion-interval";
import type { Figure, FigureInterval, RateFigure } from "./figure";
import { level } from "./level";

/** Excepted units of those eligible, the excepted among them. */
export type Share = {
  readonly excepted: number;
  readonly eligible: number;
  /** Null where no unit is eligible. */
  readonly share: number | null;
};

/** How often a clinician's units of a criterion are excepted, beside the practice's others. */
export type ExceptionShare = Share & {
  /** The clinician's figure of the criterion. */
  readonly figure: RateFigure;
  readonly interval: FigureInterval | null;
  readonly others: Share;
  /** Null where there are too few exceptions, or nobody to compare with. */
  readonly above: boolean | null;
};

/** Under this many exceptions of a clinician nothing is read into their share (common practice for small counts). */
export const fewestExceptions = 5;

/**
 * The shares of the clinicians of one practice in one period, in the order of the figures; those without a unit are
 * left out. A share is above where its exact interval (Clopper–Pearson) lies wholly above the share of the
 * practice's units without the clinician's.
 *
 * @param figures of the practice as a whole (kind group) and of its clinicians
 */
export function exceptionShares(figures: readonly Figure[]): ExceptionShare[] {
  const rates = figures.filter((figure) => figure.kind === "rate");
  return rates.flatMap((figure) => {
    const { about, measure } = figure;
    if (about.kind !== "clinician") return [];
    const own = shareOf(figure);
    const whole = rates.find((one) => one.about.kind === "group" && one.measure === measure);
    if (!whole || own.eligible === 0) return [];
    const all = shareOf(whole);
    const others = share(all.excepted - own.excepted, all.eligible - own.eligible);
    const interval = clopperPearson(own.excepted, own.eligible, level) ?? null;
    const compared = own.excepted >= fewestExceptions && others.share !== null && interval;
    const above = compared ? interval.lower > (others.share ?? 1) : null;
    return [{ ...own, figure, interval, others, above }];
  });
}

function shareOf({ excepted, denominator }: RateFigure): Share {
  const units = Object.values(excepted).reduce((sum, some) => sum + some, 0);
  return share(units, denominator + units);
}

function share(excepted: number, eligible: number): Share {
  return { excepted, eligible, share: eligible > 0 ? excepted / eligible : null };
}
