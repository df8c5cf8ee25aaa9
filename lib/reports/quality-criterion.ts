import { type FiguresReach, qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { dayAfter, type Period, quarterOf, rollingYear, shifted } from "@/lib/records/period";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { type AdherenceCriterion, adherenceCriterion } from "@/lib/views/adherence-report";
import { type CriterionQuarters, criterionQuarters } from "@/lib/views/criterion-quarters";
import { periodWords } from "@/lib/views/period-words";
import { hasFewUnits, rollingNote } from "@/lib/views/rolling-note";
import { adherenceFigures } from "./adherence-figures";
import { type Address, type Asked, AskedWrongly, askedFigures } from "./asked-period";
import { criterionTitles } from "./criterion-on-day";
import { standingOfMeasure } from "./protocol/standing-of-measure";

export type QualityCriterion = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly of: AdherenceCriterion;
  readonly quarters: CriterionQuarters;
  /** Where the period has few units: the last four quarters in a sentence. */
  readonly rolling: string | null;
};

/** How many quarters back the history goes. */
const quartersShown = 8;

/** One criterion in the period and over the last quarters, without clinicians. @throws Refused, AskedWrongly */
export async function qualityCriterion(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<QualityCriterion> {
  const { reach, period, periods, practices, practice } = await askedFigures(
    qualityReach(viewer),
    address,
  );
  const codes = practice ? [practice] : practices.map(({ code }) => code);
  const only = [id];
  const [figures, history, year] = await Promise.all([
    adherenceFigures(reach, [period], codes, { parts: true, only }),
    adherenceFigures(reach, quartersUpTo(period), codes, { parts: false, only }),
    adherenceFigures(reach, [rollingYear(period)], codes, { parts: false, only }),
  ]);
  const of = adherenceCriterion(figures, []);
  if (!of) throw new AskedWrongly(await whyNone(reach, id, codes, period));
  const [whole] = figures;
  return {
    period,
    periods,
    practices,
    practice,
    of,
    quarters: criterionQuarters(history, period.name),
    rolling: whole && hasFewUnits(whole) ? rollingNote(whole, year[0]) : null,
  };
}

/** What is said in place of a criterion that was in force on no day of the period. */
async function whyNone(
  reach: FiguresReach,
  id: string,
  codes: readonly string[],
  period: Period,
): Promise<string> {
  const title = criterionTitles(await protocolWithin(reach))(id);
  if (title === id) return "There is no criterion of that name.";
  const standing = await standingOfMeasure(reach, criterionMeasure({ id }), codes, period);
  return `${title}, ${periodWords(period)}. ${standing?.notInForce ?? "No figure of it can be shown."}`;
}

/** The quarters up to the one in which the period ends, oldest first. */
function quartersUpTo(period: Period): Period[] {
  const last = quarterOf(dayAfter(period.until, -1));
  return Array.from({ length: quartersShown }, (_, place) =>
    shifted(last, place + 1 - quartersShown),
  );
}
