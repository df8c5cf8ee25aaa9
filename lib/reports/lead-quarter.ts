import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { completenessOf } from "@/lib/audit/completeness";
import type { Figure } from "@/lib/audit/figure";
import { measures } from "@/lib/measures/measures";
import { criteria, criterionMeasure } from "@/lib/protocol/criteria";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { heldCount } from "@/lib/store/quality/held-count";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { type LeadQuarter, leadQuarterView } from "@/lib/views/lead-quarter";
import { type Address, type Asked, askedFigures } from "./asked-period";
import { figures } from "./figures";
import { onFourQuarters } from "./four-quarters";

/** What the page shows of the four families across clinicians; the others have their own pages. */
const medians = ["irrigation-time", "volume"];
const rates = ["separation-per-use", ...criteria.filter((one) => one.byClinician).map(criterionMeasure)];
const byChair = criteria.filter((one) => !one.byClinician).map(criterionMeasure);
/** Per instrument, completeness is read on the measure's own page: it is the one slow count. */
const others = measures.map((one) => one.id).filter((id) => ![...medians, ...rates, "separation-per-instrument"].includes(id));

/** What the address asks for, beside what the page shows. */
export type LeadPage = Pick<Asked, "period" | "periods" | "practices" | "practice"> & { readonly view: LeadQuarter };

/** How many of the canals whose values disagree are listed. */
const listed = 20;
const monthsShown = 24;

/** The clinical lead's quarter. @throws Refused, AskedWrongly */
export async function leadQuarter(viewer: Viewer, address: Address): Promise<LeadPage> {
  const { reach, period, periods, practices, practice, state } = await askedFigures(leadReach(viewer), address);
  const months = monthsUpTo(period.until, monthsShown);
  const [weeks, held, disagreeing, ofQuarter, rest, ofMonths] = await Promise.all([
    weeklyVisits(reach, period),
    heldCount(reach),
    disagreeingCanals(reach, period, listed),
    quarterFigures(reach, period),
    figures(reach, { measures: others, periods: [period], by: ["group"] }),
    monthFigures(reach, months),
  ]);
  const wholes = [...ofQuarter.quarter, ...rest].filter((figure) => figure.about.kind === "group");
  const order = [...measures.map((one) => one.id), ...rates, ...byChair];
  const view = leadQuarterView({
    period, practice, practices, months, weeks, held, disagreeing, lastDay: state.lastDay,
    completeness: wholes.map(completenessOf).sort((one, other) => order.indexOf(one.measure) - order.indexOf(other.measure)),
    across: ofQuarter.shown,
    quarter: ofQuarter.quarter,
    ofMonths,
  });
  return { period, periods, practices, practice, view };
}

async function quarterFigures(reach: FiguresReach, period: Period): Promise<{ quarter: Figure[]; shown: Figure[] }> {
  const [continuous, shares, chairs] = await Promise.all([
    figures(reach, { measures: medians, periods: [period], by: ["group", "clinician"] }),
    figures(reach, { measures: rates, periods: [period], by: ["group", "practice", "clinician"] }),
    figures(reach, { measures: byChair, periods: [period], by: ["group", "practice", "chair"] }),
  ]);
  const quarter = [...continuous, ...shares, ...chairs];
  return { quarter, shown: await onFourQuarters(reach, period, quarter) };
}

async function monthFigures(reach: FiguresReach, months: readonly Period[]): Promise<Figure[]> {
  const found = await Promise.all(
    [medians, rates, byChair].map((some) => figures(reach, { measures: some, periods: months, by: ["group"] })),
  );
  return found.flat();
}
