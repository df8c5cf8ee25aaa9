import type { GoodRow, HeldRow } from "@/lib/intake/sheet";
import type { TestedCounts } from "@/lib/views/mapping/test-words";

export type TableCounts = TestedCounts;

/** Different reasons that are told apart; what is beyond is counted together. */
const mostReasons = 200;
const mostExamples = 3;

/** Counts what would become of the rows of a table, by the reason why; memory does not grow with them. */
export function tableCounts(table: string) {
  let good = 0;
  let same = 0;
  let held = 0;
  let before = "";
  const reasons = new Map<
    string,
    { field: string; says: string; rows: number; examples: string[] }
  >();
  return {
    add(row: GoodRow | HeldRow): void {
      if (row.verdict === "good") {
        good += 1;
        const now = JSON.stringify(row.values);
        if (now === before) same += 1;
        before = now;
        return;
      }
      held += 1;
      for (const { column = "", found, remedy } of row.reasons) {
        const whole = `${column} ${remedy}`;
        const key = reasons.has(whole) || reasons.size < mostReasons ? whole : "more";
        const known = reasons.get(key) ?? {
          ...{ field: key === "more" ? "" : column, rows: 0, examples: [] },
          says: key === "more" ? "other reasons" : remedy,
        };
        known.rows += 1;
        if (known.examples.length < mostExamples)
          known.examples.push(
            `line ${row.line}: ${found === "" ? "nothing" : `“${found.slice(0, 80)}”`}`,
          );
        reasons.set(key, known);
      }
    },
    told(): TableCounts {
      const most = [...reasons.values()].sort((one, other) => other.rows - one.rows);
      return { table, good, same, held, reasons: most };
    },
  };
}
