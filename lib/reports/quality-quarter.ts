import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { RateFigure } from "@/lib/audit/figure";
import { dayAfter, type Period, quarterOf, rollingYear, shifted } from "@/lib/records/period";
import { exportsBefore } from "@/lib/store/quality/exports";
import { safetyEvents } from "@/lib/store/quality/safety-events";
import { upkeepDays } from "@/lib/store/quality/upkeep-days";
import { adherenceFinding } from "@/lib/views/adherence-finding";
import type { AdherenceCriterion, AdherenceReport } from "@/lib/views/adherence-report";
import { type CriterionQuarters, criterionQuarters } from "@/lib/views/criterion-quarters";
import { type ExceptionLine, exceptionLines } from "@/lib/views/exception-lines";
import { type ExportLine, exportLines } from "@/lib/views/export-lines";
import { hasFewUnits, rollingNote } from "@/lib/views/rolling-note";
import { type SafetyLine, safetyLines } from "@/lib/views/safety-list";
import { type UpkeepCalendar, upkeepCalendar } from "@/lib/views/upkeep-calendar";
import { adherenceFigures } from "./adherence-figures";
import { adherenceReport } from "./adherence-report";
import { type Address, type Asked, askedFigures } from "./asked-period";

export type QualityQuarter = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly finding: string;
  readonly report: AdherenceReport;
  readonly criteria: readonly (AdherenceCriterion & {
    readonly quarters: CriterionQuarters;
    /** Where the quarter has few units: the last four quarters in a sentence. */
    readonly rolling: string | null;
  })[];
  readonly upkeep: UpkeepCalendar;
  readonly exceptions: readonly ExceptionLine[];
  readonly safety: readonly SafetyLine[];
  readonly exports: readonly ExportLine[];
};

/** How many quarters back the history goes. */
const quartersShown = 8;

/** The quality officer's page: adherence without clinicians. @throws Refused, AskedWrongly */
export async function qualityQuarter(viewer: Viewer, address: Address): Promise<QualityQuarter> {
  const { reach, period, periods, practices, practice } = await askedFigures(
    qualityReach(viewer),
    address,
  );
  const codes = practice ? [practice] : practices.map(({ code }) => code);
  const [report, history, upkeep, safety, exports] = await Promise.all([
    adherenceReport(reach, period),
    adherenceFigures(reach, quartersUpTo(period), codes, { parts: false }),
    upkeepDays(reach, period, "line-rinse"),
    safetyEvents(reach, period),
    exportsBefore(qualityReach(viewer), 20),
  ]);
  const wholes = report.criteria.flatMap(wholeOf);
  // Most quarters have units enough; only the others cost a second look.
  const year = wholes.some(hasFewUnits)
    ? await adherenceFigures(reach, [rollingYear(period)], codes, { parts: false })
    : [];
  return {
    period,
    periods,
    practices,
    practice,
    report,
    finding: adherenceFinding(wholes, period),
    criteria: report.criteria.map((one) => {
      const of = (figure: RateFigure) => figure.measure === `criterion/${one.criterion.id}`;
      return {
        ...one,
        quarters: criterionQuarters(history.filter(of), period.name),
        rolling: rollingNote(wholes.find(of), year.find(of)),
      };
    }),
    upkeep: upkeepCalendar(upkeep, period),
    exceptions: exceptionLines(report.criteria),
    safety: safetyLines(safety.events, safety.patients),
    exports: exportLines(exports, practices[0]?.zone ?? "UTC"),
  };
}

/** The quarters up to the one in which the period ends, oldest first. */
function quartersUpTo(period: Period): Period[] {
  const last = quarterOf(dayAfter(period.until, -1));
  return Array.from({ length: quartersShown }, (_, place) =>
    shifted(last, place + 1 - quartersShown),
  );
}

/** The report speaks of the whole first, then of its parts. */
function wholeOf(criterion: AdherenceCriterion): RateFigure[] {
  return criterion.lines.slice(0, 1).map((line) => line.figure);
}
