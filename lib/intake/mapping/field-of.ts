import type { Column } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { toothNotations } from "@/lib/records/tooth";
import type { VisitField } from "./visit-fields";

const ofVisit: Readonly<Record<VisitField, Omit<Column, "name">>> = {
  "visit.at": {
    type: "instant",
    says: "A moment within the visit; finds the visit of a row that has no session_id.",
    example: "2026-07-03T09:20:00+01:00",
  },
  "visit.until": {
    type: "instant",
    says: "The end of what the row tells, where it took a while.",
    example: "2026-07-03T09:24:00+01:00",
  },
  "visit.chair": { type: "code", says: "The visit's chair.", example: "NORTH-2" },
  "visit.tooth": { type: "tooth", says: "The visit's tooth.", example: "36" },
  "visit.tooth_notation": {
    type: "choice",
    choices: toothNotations,
    says: "How the visit's tooth is written.",
    example: "fdi",
  },
};

/** A field that a mapping may feed: a column of the table, or one that finds the visit. Undefined where there is none. */
export function fieldOf(table: TableName, name: string): Column | undefined {
  const column = tables[table].columns.find((one) => one.name === name);
  if (column) return column;
  const visit = Object.hasOwn(ofVisit, name) ? ofVisit[name as VisitField] : undefined;
  return visit && tables[table].parent ? { name, ...visit } : undefined;
}

/** All fields that a mapping may feed in a table. */
export function fieldsOf(table: TableName): Column[] {
  const finding = tables[table].parent ? (Object.keys(ofVisit) as VisitField[]) : [];
  return [...tables[table].columns, ...finding.map((name) => ({ name, ...ofVisit[name] }))];
}
