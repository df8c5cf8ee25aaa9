import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { type Completeness, completenessOf } from "@/lib/audit/completeness";
import type { Figure } from "@/lib/audit/figure";
import { flaggedOf } from "@/lib/audit/flagged";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { tallies } from "@/lib/store/figures/tallies";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { heldCount } from "@/lib/store/quality/held-count";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { type LeadQuarter, leadQuarterView } from "@/lib/views/lead-quarter";
import { type Address, type Asked, askedFigures } from "./asked-period";
import { criteriaShown } from "./criteria-shown";
import { figures, measuresShown } from "./figures";
import { levelsInForce } from "./flag-levels";
import { onFourQuarters } from "./four-quarters";
import { keptWithin } from "./kept-within";

/** What the page shows of the four families across clinicians; the others have their own pages. */
const medians = ["irrigation-time", "volume"];
const rates = ["separation-per-use"];

/** What the address asks for, beside what the page shows. */
export type LeadPage = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly view: LeadQuarter;
};

/** How many of the canals whose values disagree are listed. */
const listed = 20;
const monthsShown = 24;

/** The clinical lead's quarter. @throws Refused, AskedWrongly */
export async function leadQuarter(viewer: Viewer, address: Address): Promise<LeadPage> {
  const { reach, period, periods, practices, practice, state } = await askedFigures(
    leadReach(viewer),
    address,
  );
  const months = monthsUpTo(period.until, monthsShown);
  const criteria = await criteriaShown(reach, [period]);
  const [weeks, held, disagreeing, ofQuarter, complete, ofMonths, levels] = await Promise.all([
    weeklyVisits(reach, period),
    heldCount(reach),
    disagreeingCanals(reach, period, listed),
    quarterFigures(reach, period, criteria),
    completeness(reach, period),
    monthFigures(reach, months),
    levelsInForce(reach),
  ]);
  const view = leadQuarterView({
    period,
    practice,
    practices,
    months,
    weeks,
    held,
    disagreeing,
    lastDay: state.lastDay,
    completeness: complete,
    across: ofQuarter.shown,
    flags: flaggedOf(ofQuarter.shown, levels),
    quarter: ofQuarter.quarter,
    ofMonths,
  });
  return { period, periods, practices, practice, view };
}

async function quarterFigures(
  reach: FiguresReach,
  period: Period,
  criteria: readonly Criterion[],
): Promise<{ quarter: Figure[]; shown: Figure[] }> {
  const measuresOf = (byClinician: boolean) =>
    criteria.filter((one) => one.byClinician === byClinician).map(criterionMeasure);
  const [continuous, shares, chairs] = await Promise.all([
    figures(reach, { measures: medians, periods: [period], by: ["group", "clinician"] }),
    figures(reach, {
      measures: [...rates, ...measuresOf(true)],
      periods: [period],
      by: ["group", "practice", "clinician"],
    }),
    figures(reach, {
      measures: measuresOf(false),
      periods: [period],
      by: ["group", "practice", "chair"],
    }),
  ]);
  const quarter = [...continuous, ...shares, ...chairs];
  return { quarter, shown: await onFourQuarters(reach, period, quarter) };
}

/** Counts alone, of the whole, in page order; kept until the records change. */
function completeness(reach: FiguresReach, period: Period): Promise<readonly Completeness[]> {
  return keptWithin(reach, ["completeness", period], () => counted(reach, period));
}

async function counted(reach: FiguresReach, period: Period): Promise<Completeness[]> {
  // Per instrument, completeness is read on the measure's own page: it is the one slow count.
  const toComplete = (await measuresShown(reach, [period])).filter(
    (id) => id !== "separation-per-instrument",
  );
  const found = await tallies(reach, {
    measures: toComplete,
    periods: [period],
    by: ["group"],
    ends: medianEnds(level),
    countsAlone: true,
  });
  return found
    .map(completenessOf)
    .sort((one, other) => toComplete.indexOf(one.measure) - toComplete.indexOf(other.measure));
}

async function monthFigures(reach: FiguresReach, months: readonly Period[]): Promise<Figure[]> {
  const found = await Promise.all(
    [medians, rates].map((some) =>
      figures(reach, { measures: some, periods: months, by: ["group"] }),
    ),
  );
  return found.flat();
}
