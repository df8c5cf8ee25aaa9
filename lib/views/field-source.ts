import type { UnitKind } from "@/lib/protocol/criterion";
import type { Values } from "@/lib/records/column";
import type { Place } from "@/lib/records/reason";
import { type TableName, tables } from "@/lib/records/tables";

/** A row of a visit, and where it was first seen. */
export type SourceRow = {
  readonly table: TableName;
  readonly id: string;
  readonly values: Values;
  readonly place: Place;
};

/** Where a unit's values may have come from. */
export type Sources = {
  readonly unit: UnitKind;
  readonly canal: string;
  readonly seq: number | null;
  readonly rows: readonly SourceRow[];
};

/** The rows that a field of the unit came from; none of what is worked out of several. */
export function sourcesOfField(name: string, of: Sources): SourceRow[] {
  if (name.startsWith("step/")) return stepRow(name.slice(5), of);
  const rows = tablesOf(of.unit).flatMap((table) =>
    hasColumn(table, name)
      ? of.rows.filter((row) => row.table === table && isOf(row, table, of))
      : [],
  );
  const [first] = rows;
  // A separation's management and telling may be any of several follow-ups.
  return first
    ? rows.filter(({ table }) => table === first.table || table === "followups")
    : derived(name, of);
}

/** A tooth's group, jaw and dentition come from the visit's row. */
function derived(name: string, of: Sources): SourceRow[] {
  const ofTooth = ["tooth_group", "jaw", "dentition"].includes(name);
  return ofTooth ? of.rows.filter(({ table }) => table === "sessions") : [];
}

function stepRow(step: string, { rows, canal }: Sources): SourceRow[] {
  const named = rows.filter((row) => row.table === "steps" && row.values.step === step);
  const own = named.filter((row) => row.values.canal === canal && canal !== "");
  return own.length > 0 ? own : named.filter((row) => (row.values.canal ?? "") === "");
}

function tablesOf(unit: UnitKind): readonly TableName[] {
  const inCanal: readonly TableName[] = ["canals", "sessions"];
  if (unit === "delivery") return ["irrigation", ...inCanal];
  if (unit === "use") return ["instruments", ...inCanal];
  if (unit === "separation") return ["instruments", "followups", ...inCanal];
  return unit === "canal" ? inCanal : ["sessions"];
}

function hasColumn(table: TableName, name: string): boolean {
  return tables[table].columns.some((column) => column.name === name);
}

function isOf({ values }: SourceRow, table: TableName, { canal, seq }: Sources): boolean {
  if (table === "sessions") return true;
  if ((values.canal ?? "") !== canal) return false;
  return table === "canals" || values.seq === seq;
}
