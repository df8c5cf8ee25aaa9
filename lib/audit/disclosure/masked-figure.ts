import type { CompositeFigure } from "../composite";
import type { RateFigure } from "../figure";
import { fewestPeople } from "./few-people";

/** Said wherever something is masked, the same of what rests on few people and of what would give that away: else the words would. */
export const maskedWhy = `masked: fewer than ${fewestPeople} patients, here or in what could be worked out from it`;

/** A criterion's figure of which nothing is published but that it is masked. */
export type MaskedFigure = Pick<
  RateFigure,
  "kind" | "measure" | "criterion" | "about" | "period" | "unit"
> & { readonly masked: true; readonly why: string; readonly inTheseRecords?: undefined } & {
  readonly [Count in
    | "population"
    | "excluded"
    | "excepted"
    | "notRecorded"
    | "numerator"
    | "denominator"
    | "notMet"
    | "estimate"
    | "interval"
    | "clustered"]: null;
} & { readonly beyondChance?: undefined };

/** What is left of a figure when it is masked. */
export function maskedFigure(figure: RateFigure): MaskedFigure {
  const { kind, measure, criterion, about, period, unit } = figure;
  return {
    ...{ kind, measure, ...(criterion ? { criterion } : {}), about, period, unit },
    ...{ population: null, excluded: null, excepted: null, notRecorded: null },
    ...{ numerator: null, denominator: null, notMet: null },
    ...{ estimate: null, interval: null, clustered: null },
    ...{ masked: true, why: maskedWhy },
  };
}

/** Both overall scores of a subject without those by criterion, or that they are masked. */
export type PublishedScores =
  | (Omit<CompositeFigure, "byCriterion"> & { readonly masked?: undefined })
  | (Pick<CompositeFigure, "about" | "period"> & {
      readonly masked: true;
      readonly why: string;
      readonly opportunities: null;
      readonly visits: null;
    });

/** What is published of both overall scores: by criterion nothing, as that repeats the criteria's own lines. */
export function publishedScores(of: CompositeFigure, masked: boolean): PublishedScores {
  const { about, period } = of;
  if (masked) return { about, period, masked, why: maskedWhy, opportunities: null, visits: null };
  const { byCriterion, ...rest } = of;
  return rest;
}
