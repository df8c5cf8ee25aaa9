import type { OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { ownMisses } from "@/lib/store/figures/own-misses";
import { type OwnCriterion, ownCriterion } from "@/lib/views/own-criterion";
import type { OwnFigure } from "./own-figures";

/** How many units a page of a list holds. */
export const missesShown = 10;

/** Which criterion's list is turned to which page, counted from 1. */
export type MissesAsked = { readonly criterion: string | undefined; readonly page: number };

/** A criterion with a page of the units that missed it; the pages before and after, where there are any. */
export type OwnCriterionPage = OwnCriterion & { readonly page: number; readonly pages: number };

/** The clinician's own criteria, in the order given; `periodOf` tells the period each figure is of. */
export async function ownCriteria(
  reach: OwnReach,
  own: readonly OwnFigure[],
  periodOf: (name: string) => Period,
  asked: MissesAsked,
): Promise<OwnCriterionPage[]> {
  const pages = own.flatMap(({ figure, comparison, note }) => {
    const criterion = figure.criterion;
    if (!criterion || figure.kind !== "rate") return [];
    const pages = Math.max(1, Math.ceil((figure.notMet + figure.notRecorded) / missesShown));
    const page = asked.criterion === criterion.id ? Math.min(Math.max(1, asked.page), pages) : 1;
    const period = periodOf(figure.period);
    const place = { limit: missesShown, offset: (page - 1) * missesShown };
    return [{ figure, comparison, note, page, pages, asked: { criterion, period, ...place } }];
  });
  const misses = await ownMisses(
    reach,
    pages.map((one) => one.asked),
  );
  return pages.map(({ figure, comparison, note, page, pages }, place) => ({
    ...ownCriterion(figure, comparison, note, misses[place] ?? []),
    page,
    pages,
  }));
}
