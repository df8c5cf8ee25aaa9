import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { type Completeness, completenessOf } from "@/lib/audit/completeness";
import type { Figure } from "@/lib/audit/figure";
import { flaggedOf } from "@/lib/audit/flagged";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { beganWithin } from "@/lib/protocol/began-within";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { tallies } from "@/lib/store/figures/tallies";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { heldCount } from "@/lib/store/quality/held-count";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { type LeadQuarter, leadQuarterView } from "@/lib/views/lead-quarter";
import { type Address, type Asked, askedFigures } from "./asked-period";
import { composites } from "./composite";
import { criteriaShown } from "./criteria-shown";
import { figures, measuresShown } from "./figures";
import { levelsInForce } from "./flag-levels";
import { onFourQuarters } from "./four-quarters";
import { keptWithin } from "./kept-within";

/** What the page charts across clinicians beside the criteria; the others have their own pages. */
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
  const [weeks, held, disagreeing, measured, adherence, overall, complete, ofMonths, levels] =
    await Promise.all([
      weeklyVisits(reach, period),
      heldCount(reach),
      disagreeingCanals(reach, period, listed),
      measureFigures(reach, period),
      adherenceOf(reach, period, criteria),
      composites(reach, { periods: [period], by: ["group", "practice", "clinician"] }),
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
    criteria,
    adherence,
    began: await beganIn(reach, period, criteria),
    across: measured.shown,
    composites: overall,
    empty: [...measured.quarter, ...adherence].every((figure) => figure.population === 0),
    flags: flaggedOf([...measured.shown, ...adherence], levels),
    ofMonths,
  });
  return { period, periods, practices, practice, view };
}

async function beganIn(
  reach: FiguresReach,
  period: Period,
  criteria: readonly Criterion[],
): Promise<ReadonlyMap<string, readonly string[]>> {
  const protocol = await protocolWithin(reach);
  return new Map(
    criteria.map(({ id }) => [id, beganWithin(protocol, id, reach.practices, period)]),
  );
}

/** The measures in the period, and as they are shown: a rate with few units on four quarters. */
async function measureFigures(
  reach: FiguresReach,
  period: Period,
): Promise<{ quarter: Figure[]; shown: Figure[] }> {
  const found = await Promise.all(
    [medians, rates].map((measures) =>
      figures(reach, { measures, periods: [period], by: ["group", "clinician"] }),
    ),
  );
  const quarter = found.flat();
  return { quarter, shown: await onFourQuarters(reach, period, quarter) };
}

/** Criteria in the period, by clinician or, for what staff and equipment do together, by chair. */
async function adherenceOf(
  reach: FiguresReach,
  period: Period,
  criteria: readonly Criterion[],
): Promise<Figure[]> {
  const found = await Promise.all(
    (["clinician", "chair"] as const).map((kind) =>
      figures(reach, {
        measures: criteria
          .filter((one) => one.byClinician === (kind === "clinician"))
          .map(criterionMeasure),
        periods: [period],
        by: ["group", "practice", kind],
      }),
    ),
  );
  return found.flat();
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
