import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { exportsBefore } from "@/lib/store/quality/exports";
import { upkeepDays } from "@/lib/store/quality/upkeep-days";
import { adherenceFinding } from "@/lib/views/adherence-finding";
import type {
  AdherenceCriterion,
  AdherenceReport,
  ReportedLine,
} from "@/lib/views/adherence-report";
import { type ExceptionLine, exceptionLines } from "@/lib/views/exception-lines";
import { type ExportLine, exportLines } from "@/lib/views/export-lines";
import { ownWordsOf } from "@/lib/views/protocol/own-words";
import type { SafetyLine } from "@/lib/views/safety-list";
import { type UpkeepCalendar, upkeepCalendar } from "@/lib/views/upkeep-calendar";
import { lineRinse } from "@/lib/views/upkeep-state";
import { adherenceReport } from "./adherence-report";
import { type Address, type Asked, askedFigures } from "./asked-period";
import { keptWithin } from "./kept-within";
import { safetyCounts } from "./safety-counts";
import { tomorrow } from "./tomorrow";

export type QualityQuarter = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly finding: string;
  readonly report: AdherenceReport;
  readonly upkeep: UpkeepCalendar;
  readonly exceptions: readonly ExceptionLine[];
  readonly safety: readonly SafetyLine[];
  readonly exports: readonly ExportLine[];
};

/** The quality officer's page: adherence without clinicians. @throws Refused, AskedWrongly */
export async function qualityQuarter(viewer: Viewer, address: Address): Promise<QualityQuarter> {
  const { reach, period, periods, practices, practice } = await askedFigures(
    qualityReach(viewer),
    address,
  );
  const [report, upkeep, safety, exports, terms] = await Promise.all([
    adherenceReport(reach, period),
    keptWithin(reach, ["line rinse", period], () => upkeepDays(reach, period, lineRinse)),
    safetyCounts(reach, period),
    exportsBefore(qualityReach(viewer), 20),
    ownTerms(reach),
  ]);
  const wholes = report.criteria.flatMap(wholeOf);
  return {
    period,
    periods,
    practices,
    practice,
    report,
    finding: adherenceFinding(wholes, period),
    upkeep: upkeepCalendar(upkeep, period, lineRinse, tomorrow()),
    exceptions: exceptionLines(report.criteria, ownWordsOf(terms)),
    safety,
    exports: exportLines(exports, practices[0]?.zone ?? "UTC"),
  };
}

/** The report speaks of the whole first, then of its parts. */
function wholeOf(criterion: AdherenceCriterion): ReportedLine["figure"][] {
  return criterion.lines.slice(0, 1).map((line) => line.figure);
}
