import { type Flag, type FlagLevels, flags } from "@/lib/statistics/flags";
import type { Figure, RateFigure } from "./figure";
import { nearestSeen } from "./nearest-seen";
import { type Pooled, poolsOf } from "./pooled";

/** A clinician's rate, what chance makes of it among all the page's figures, and what could have been seen. */
export type Flagged = {
  readonly figure: RateFigure;
  readonly pooled: Pooled;
  readonly flag: Flag;
  /**
   * The nearest true rate, on the side that would be of concern, that so many units would have shown at least four
   * times in five; null where none would have been.
   */
  readonly detectable: number | null;
};

/** Every figure of a page that takes part, and how many chance alone would set outside plain 95 % limits. */
export type PageFlags = {
  readonly m: number;
  readonly chance: number;
  readonly levels: FlagLevels;
  readonly flagged: readonly Flagged[];
  /** Clinicians' figures that take no part, as too little of them is recorded. */
  readonly notAssessable: readonly RateFigure[];
};

/**
 * Flags of all clinicians' rates on a page together, each against the pooled rate of all who are shown, by the convention
 * of lib/statistics/flags. What is not assessable, and what passes through several hands, takes no part.
 * @param figures of the page; `group` figures of the same measures among them give the pooled design effects
 */
export function flaggedOf(figures: readonly Figure[], levels: FlagLevels): PageFlags {
  const pools = poolsOf(figures);
  const taking = figures.filter(takesPart).flatMap((figure) => {
    const pooled = pools.get(figure.measure);
    return pooled ? [{ figure, pooled }] : [];
  });
  const {
    m,
    chance,
    figures: found,
  } = flags(
    taking.map(({ figure, pooled }) => ({
      events: figure.numerator,
      units: figure.denominator,
      theta: pooled.rate,
      designEffect: pooled.designEffect,
    })),
    levels,
  );
  const tail = m === 0 ? levels.look : levels.look / (2 * m);
  const flagged = taking.flatMap(({ figure, pooled }, place) => {
    const flag = found[place];
    return flag ? [{ figure, pooled, flag, detectable: detectable(figure, pooled, tail) }] : [];
  });
  const notAssessable = figures.filter(
    (figure): figure is RateFigure => isOfClinician(figure) && !isAssessable(figure),
  );
  return { m, chance, levels, flagged, notAssessable };
}

function takesPart(figure: Figure): figure is RateFigure {
  return isOfClinician(figure) && isAssessable(figure);
}

function isOfClinician(figure: Figure): figure is RateFigure {
  return (
    figure.kind === "rate" &&
    figure.about.kind === "clinician" &&
    figure.denominator > 0 &&
    figure.measure !== "separation-per-instrument"
  );
}

function isAssessable(figure: RateFigure): boolean {
  return figure.inTheseRecords !== "not assessable";
}

function detectable(figure: RateFigure, pooled: Pooled, tail: number): number | null {
  const units = Math.floor(figure.denominator / Math.max(1, pooled.designEffect));
  return nearestSeen(figure.measure, units, pooled.rate, tail);
}
