import type { AuditComputed } from "@/lib/audit/cycle/audit-content";
import {
  type DataFinding,
  dataFindings,
  emptyPractices,
  mostHeld,
} from "@/lib/audit/cycle/data-findings";
import { type CompletenessLine, completenessLines } from "../completeness-lines";
import { day } from "../day";
import { count, setShare } from "../quantity";
import { type WeekGrid, weekGrid } from "../week-grid";
import { dataTextKey } from "./text-keys";

/** A finding of the data check; the text of that key says what is made of it. */
export type DataFindingLine = {
  readonly id: DataFinding["id"];
  readonly kind: DataFinding["kind"];
  readonly words: string;
  readonly key: string;
};

export type DataCheckView = {
  readonly findings: readonly DataFindingLine[];
  readonly weeks: WeekGrid;
  readonly completeness: readonly CompletenessLine[];
  /** What the audit rests on: rows by table. */
  readonly counts: readonly { readonly table: string; readonly rows: string }[];
};

/** @param today YYYY-MM-DD */
export function dataView(computed: AuditComputed, today: string): DataCheckView {
  const weeks = weekGrid(computed.weeks, computed.period, computed.lastDay);
  const completeness = completenessLines(computed.completeness);
  return {
    findings: dataFindings(computed, today, weeks.gaps.length > 0).map(({ id, kind }) => ({
      ...{ id, kind, key: dataTextKey(id) },
      words: wordsOf(id, computed, weeks, completeness),
    })),
    weeks,
    completeness,
    counts: Object.entries(computed.records.counts).map(([table, rows]) => ({
      table,
      rows: count(rows),
    })),
  };
}

function wordsOf(
  id: DataFinding["id"],
  computed: AuditComputed,
  weeks: WeekGrid,
  completeness: readonly CompletenessLine[],
): string {
  const rows = Object.values(computed.records.counts).reduce((sum, one) => sum + one, 0);
  switch (id) {
    case "no-records":
      return "There is no visit in this period: bring its records in, or choose another period.";
    case "not-over":
      return `The period ends on ${day(computed.period.until)}: until it is over, later records would change the figures.`;
    case "practices-empty":
      return `No visit of ${emptyPractices(computed).join(", ")} is in: bring the records in, or audit the other practices by themselves.`;
    case "held-many":
      return `${count(computed.held)} rows of this period are held and count nowhere, beside ${count(rows)} that do: over ${setShare(mostHeld)}. Mend them or let them go on the page of held rows first.`;
    case "held":
      return `${count(computed.held)} ${computed.held === 1 ? "row of this period is held and counts" : "rows of this period are held and count"} nowhere, beside ${count(rows)} that do. Mend them, or note what they may change.`;
    case "weeks":
      return `${weeks.gaps.join(" ")} Closed, or records that have not come in: only the practice can tell.`;
    case "floors":
      return `Too little is recorded to assess: ${completeness
        .filter(({ underFloor }) => underFloor)
        .map(({ title, recorded }) => `${title} (${recorded})`)
        .join("; ")}.`;
    case "disagreeing":
      return `${count(computed.disagreeing)} ${computed.disagreeing === 1 ? "canal has" : "canals have"} a volume, flow and time that disagree by over a tenth.`;
  }
}
