import { count } from "../quantity";
import { fieldWords } from "./field-words";
import { tableHeading } from "./table-names";
import type { TestView } from "./test-view";

/** What a test of the whole file counted in one table. */
export type TestedCounts = {
  readonly table: string;
  readonly good: number;
  readonly same: number;
  readonly held: number;
  readonly reasons: readonly {
    readonly field: string;
    readonly says: string;
    readonly rows: number;
    readonly examples: readonly string[];
  }[];
};

const mostShown = 30;

/** The counts of a test in words. */
export function testWords(tables: readonly TestedCounts[]): TestView {
  const held = tables.reduce((sum, one) => sum + one.held, 0);
  const good = tables.reduce((sum, one) => sum + one.good, 0);
  return {
    state: "done",
    says:
      held === 0
        ? `All ${count(good)} rows are right by themselves.`
        : `${count(good)} rows are right by themselves; ${count(held)} would be held, to be mended or let go on the page Held rows.`,
    tables: tables.map((one, place) => ({
      id: String(place),
      heading: tableHeading(one.table),
      good: count(one.good),
      same: count(one.same),
      held: count(one.held),
      reasons: one.reasons.slice(0, mostShown).map(({ field, says, rows, examples }, at) => ({
        id: String(at),
        field: field === "" ? "The row" : fieldWords(field),
        says,
        rows: count(rows),
        examples,
      })),
    })),
  };
}
