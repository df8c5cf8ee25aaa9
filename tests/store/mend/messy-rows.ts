import * as fc from "fast-check";
import { checkRow } from "@/lib/intake/check-row";
import type { Changes } from "@/lib/intake/mend/change";
import type { Context } from "@/lib/intake/sheet";
import type { TableName } from "@/lib/records/tables";
import type { StagedRow } from "@/lib/store/import/staging";

/** A row as a file says it. */
export type Messy = { readonly table: TableName; readonly cells: Readonly<Record<string, string>> };

export const context: Context = {
  zoneOf: () => "Europe/London",
  pseudonym: (_, reference) => reference,
  now: new Date("2026-11-26T00:00:00Z"),
};

const visits = fc.constantFrom("V-1", "V-2");
const lost = fc.constantFrom("V-1", "V-1", "V-2", "V-9");
const canals = fc.constantFrom("MB1", "MB1", "D", "ML");

const session = visits.chain((session_id) =>
  fc.record({
    session_id: fc.constant(session_id),
    ...constants({ practice: "OAK", chair: "OAK-1", patient: "hash-1", tooth_notation: "fdi" }),
    ...constants({ treatment: "primary", outcome: "completed" }),
    started_at: fc.constant(session_id === "V-1" ? "2026-07-03T09:10" : "2026-07-06T09:10"),
    clinician: fc.constantFrom("C01", "C01", ""),
    tooth: fc.constantFrom("26", "26", "99"),
  }),
);
const canal = fc.record({
  session_id: lost,
  canal: canals,
  preparation: fc.constantFrom("rotary", "rotary", "rotory"),
  timer_reset: fc.constantFrom("yes", "no", ""),
});
const delivery = fc.record({
  ...{ session_id: lost, canal: canals, seq: fc.constantFrom("1", "2") },
  irrigant: fc.constantFrom("naocl", "naocl", "bleech"),
  volume_ml: fc.constantFrom("3", "4,5", "lots", ""),
  delivery: fc.constant("syringe"),
});
const use = fc.record({
  ...{ session_id: lost, canal: canals, seq: fc.constantFrom("1", "2") },
  ...constants({ kind: "rotary", instrument_id: "i-1" }),
  separated: fc.constantFrom("no", "no", "yes", "perhaps"),
});
const followup = fc.record({
  ...{ session_id: visits, canal: canals, seq: fc.constantFrom("1", "2") },
  ...constants({ day: "2026-08-01" }),
  management: fc.constantFrom("bypassed", "by-passed"),
});

function constants(cells: Record<string, string>) {
  return Object.fromEntries(
    Object.entries(cells).map(([name, text]) => [name, fc.constant(text)]),
  ) as Record<string, fc.Arbitrary<string>>;
}

const ofTable = (table: TableName, cells: fc.Arbitrary<Record<string, string>>) =>
  cells.map((made): Messy => ({ table, cells: made }));

/** Rows of two visits with all kinds of mistakes in them, some of them twice. */
export const messyRows: fc.Arbitrary<Messy[]> = fc.array(
  fc.oneof(
    { weight: 2, arbitrary: ofTable("sessions", session) },
    { weight: 3, arbitrary: ofTable("canals", canal) },
    { weight: 4, arbitrary: ofTable("irrigation", delivery) },
    { weight: 4, arbitrary: ofTable("instruments", use) },
    { weight: 1, arbitrary: ofTable("followups", followup) },
  ),
  { minLength: 1, maxLength: 9 },
);

/** What somebody may do on the bench to many rows alike. */
export const rules: readonly { readonly table: TableName; readonly changes: Changes }[] = [
  { table: "sessions", changes: { tooth: { from: "99", to: "26" } } },
  { table: "sessions", changes: { clinician: { from: "", to: "C01" } } },
  { table: "canals", changes: { preparation: { from: "rotory", to: "rotary" } } },
  { table: "canals", changes: { session_id: { from: "V-9", to: "V-2" } } },
  { table: "irrigation", changes: { irrigant: { from: "BLEECH", to: "naocl" } } },
  { table: "irrigation", changes: { volume_ml: { point: true } } },
  { table: "irrigation", changes: { volume_ml: { from: "lots", none: true } } },
  { table: "irrigation", changes: { session_id: { from: "V-9", to: "V-1" } } },
  { table: "irrigation", changes: { canal: { from: "ML", to: "MB1" } } },
  { table: "instruments", changes: { separated: { from: "perhaps", to: "no" } } },
  { table: "instruments", changes: { separated: { from: "perhaps", to: "yes" } } },
  { table: "instruments", changes: { canal: { from: "ML", to: "D" }, seq: { to: "2" } } },
  { table: "instruments", changes: { instrument_id: { to: "i-2" } } },
  { table: "followups", changes: { management: { from: "by-passed", to: "bypassed" } } },
];

/** The rows checked, as an import stages them: by table, in the order given. */
export function staged(rows: readonly Messy[]): Partial<Record<TableName, StagedRow[]>> {
  const found: Partial<Record<TableName, StagedRow[]>> = {};
  for (const { table, cells } of rows) {
    const some = found[table] ?? [];
    const place = { file: `${table}.csv`, line: some.length + 2 };
    found[table] = [...some, checkRow(table, cells, place, context)];
  }
  return found;
}
