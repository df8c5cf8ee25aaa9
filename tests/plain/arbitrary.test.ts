import * as fc from "fast-check";
import { expect, test } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import { measures } from "@/lib/measures/measures";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import type { Values } from "@/lib/records/column";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { arbitraryRecords } from "./arbitrary";
import type { Records } from "./records";
import { plainTallies } from "./tally";

// Properties: no expected value; what is drawn must pass the checks and reach every outcome, by the project's own rules.

const context = {
  zoneOf: () => "UTC",
  pseudonym: (_: string, reference: string) => reference,
  now: new Date(),
};

test("every random row passes the checks of its table and comes out as it went in", () => {
  fc.assert(
    fc.property(arbitraryRecords, (records) => {
      for (const table of tableNames) {
        for (const values of records[table]) {
          const checked = checkRow(
            table,
            cellsOf(table, values),
            { file: "random.csv", line: 2 },
            context,
          );
          expect(checked).toEqual({ verdict: "good", line: 2, values });
        }
      }
    }),
  );
});

test("keys are told apart, and every row's visit and canal are there", () => {
  fc.assert(
    fc.property(arbitraryRecords, (records) => {
      const of = ({ practice, session_id }: Values) => practicesOf(records, session_id, practice);
      for (const table of tableNames) {
        const keyed = tables[table].columns.filter(
          (column) => column.key && column.name !== "practice",
        );
        const keys = records[table].map((row) =>
          [of(row).join(), row.practice, ...keyed.map((column) => row[column.name])].join("|"),
        );
        expect(new Set(keys).size).toBe(keys.length);
        if (tables[table].parent) for (const row of records[table]) expect(of(row)).toHaveLength(1);
      }
      const canals = records.canals.map((row) => `${of(row)} ${row.session_id} ${row.canal}`);
      for (const row of [
        ...records.irrigation,
        ...records.instruments,
        ...records.followups,
        ...records.steps,
        ...records.exceptions,
      ]) {
        if (row.canal !== undefined)
          expect(canals).toContain(`${of(row)} ${row.session_id} ${row.canal}`);
      }
    }),
  );
});

test("among random records every outcome of every measure turns up", () => {
  const seen = new Set<string>();
  const period = { name: "2024", from: "2024-01-01", until: "2025-01-01" };
  for (const records of fc.sample(arbitraryRecords, { numRuns: 300, seed: 7 })) {
    for (const tally of plainTallies(records, {
      measures: everyMeasure,
      period,
      by: ["group"],
      ends: { ranks: () => undefined, reach: () => undefined },
    })) {
      for (const reason of Object.keys(tally.excluded)) seen.add(`${tally.measure} ${reason}`);
      for (const reason of Object.keys(tally.excepted))
        seen.add(`${tally.measure} excepted ${reason}`);
      if (tally.notRecorded > 0) seen.add(`${tally.measure} not recorded`);
      if (tally.kind === "median" && tally.n > 1) seen.add(`${tally.measure} values`);
      if (tally.kind === "rate" && tally.numerator > 0) seen.add(`${tally.measure} yes`);
      if (tally.kind === "rate" && tally.notMet > 0) seen.add(`${tally.measure} no`);
    }
  }
  const continuous = [...left, "not recorded", "values"];
  const rate = ["yes", "no", "not recorded"];
  const expected = everyMeasure.flatMap((measure) =>
    (outcomesOf[measure] ?? (measure.startsWith("sep") ? rate : continuous)).map(
      (one) => `${measure} ${one}`,
    ),
  );
  expect([...seen].sort()).toEqual(expected.sort());
});

const prepared = ["abandoned", "emergency", "dressing", "other"];
const left = [...prepared, "not-prepared"];
const everyMeasure = [...measures.map((measure) => measure.id), ...defaults.map(criterionMeasure)];
const unexcepted = ["not recorded", "yes", "no"];
const excepted = ["excepted equipment-failure", "excepted not-possible", ...unexcepted];
// A step has one reason more than the exceptions table.
const byStep = ["excepted other", ...excepted];
const young = ["primary-tooth", "open-apex"];
const outcomesOf: Record<string, string[]> = {
  "criterion/isolation": ["abandoned", "not-applicable", ...byStep],
  "criterion/length-recorded": [...left, "yes", "no"],
  // A canal that was not prepared was not prepared by a motor either, so it is not counted.
  "criterion/length-confirmed": [...prepared, ...young, ...byStep],
  "criterion/patency": [...prepared, "filling-not-removed", ...byStep],
  "criterion/main-irrigant": [...left, ...excepted],
  "criterion/hypochlorite-floor": [...left, ...young, ...excepted],
  "criterion/chelator": [...left, ...young, ...excepted],
  "criterion/rinse-after-chelator": [...left, ...excepted],
  "criterion/no-hypochlorite-chlorhexidine-contact": unexcepted,
  "criterion/tip-depth": [...left, ...excepted],
  "criterion/flow-limit": excepted,
  "criterion/activation": [...left, ...excepted],
  "criterion/timer-reset": [...left, "no-timer", ...excepted],
  "criterion/speed-torque": excepted,
  "criterion/use-limit": excepted,
  "criterion/traceable": ["yes", "no"],
  "criterion/separation-managed": unexcepted,
  "criterion/line-check": byStep,
  "criterion/torque-calibration": ["not-applicable", ...byStep],
  "criterion/handpiece-care": byStep,
  "criterion/line-rinse": ["out-of-service", ...unexcepted],
  "criterion/line-dry": ["out-of-service", ...unexcepted],
  "criterion/record-complete": ["yes", "no"],
};

function practicesOf(records: Records, session: unknown, practice: unknown): unknown[] {
  return records.sessions
    .filter(
      (one) => one.session_id === session && (practice === undefined || one.practice === practice),
    )
    .map((one) => one.practice);
}

/** A row as its file would write it. */
function cellsOf(table: TableName, values: Values): Record<string, string> {
  const columns = tables[table].columns.filter((column) => values[column.name] !== undefined);
  return Object.fromEntries(
    columns.map(({ name, type }) => [
      name,
      type === "flag" ? (values[name] ? "yes" : "no") : String(values[name]),
    ]),
  );
}
