import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Figure } from "@/lib/audit/figure";
import { flaggedOf } from "@/lib/audit/flagged";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { heldCount } from "@/lib/store/quality/held-count";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { type LeadQuarter, leadQuarterView } from "@/lib/views/lead-quarter";
import { type Address, type Asked, askedFigures } from "./asked-period";
import { composites } from "./composite";
import { criteriaShown } from "./criteria-shown";
import { figures } from "./figures";
import { levelsInForce } from "./flag-levels";
import { keptWithin } from "./kept-within";
import {
  adherenceOf,
  beganIn,
  completeness,
  measureFigures,
  medians,
  rates,
} from "./quarter-parts";

/** What the address asks for, beside what the page shows. */
export type LeadPage = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly view: LeadQuarter;
};

/** How many of the canals whose values disagree are listed. */
const listed = 20;
const monthsShown = 24;

/** The clinical lead's quarter; kept until the records change, or what else it rests on. @throws Refused, AskedWrongly */
export async function leadQuarter(viewer: Viewer, address: Address): Promise<LeadPage> {
  const asked = await askedFigures(leadReach(viewer), address);
  const { reach, period, periods, practices, practice } = asked;
  const [held, levels] = await Promise.all([heldCount(reach), levelsInForce(reach)]);
  const question = ["lead's quarter", period, practices, practice, held, levels];
  const view = await keptWithin(reach, question, () => viewOf(asked, held, levels));
  return { period, periods, practices, practice, view };
}

async function viewOf(
  { reach, period, practices, practice, state }: Asked & { readonly reach: FiguresReach },
  held: Awaited<ReturnType<typeof heldCount>>,
  levels: Awaited<ReturnType<typeof levelsInForce>>,
): Promise<LeadQuarter> {
  const months = monthsUpTo(period.until, monthsShown);
  const criteria = await criteriaShown(reach, [period]);
  const [weeks, disagreeing, measured, adherence, overall, complete, ofMonths] = await Promise.all([
    weeklyVisits(reach, period),
    disagreeingCanals(reach, period, listed),
    measureFigures(reach, period),
    adherenceOf(reach, period, criteria),
    composites(reach, { periods: [period], by: ["group", "practice", "clinician"] }),
    completeness(reach, period),
    monthFigures(reach, months),
  ]);
  return leadQuarterView({
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
}

async function monthFigures(reach: FiguresReach, months: readonly Period[]): Promise<Figure[]> {
  const found = await Promise.all(
    [medians, rates].map((some) =>
      figures(reach, { measures: some, periods: months, by: ["group"] }),
    ),
  );
  return found.flat();
}
