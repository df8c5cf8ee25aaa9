import type { Value } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { fieldsOf, type StagedRow } from "../import/staging";
import { hangsOnVisit } from "../import/stored-columns";

/**
 * What a row made anew leaves in its held row: checked values as a staged row has them, with what tells its place; or the reasons for
 * which the checks hold it still.
 */
export function stagedValues(table: TableName, row: StagedRow): Record<string, unknown> {
  if (!("values" in row)) {
    const { practice = null, session_id = null, canal = null, key, reasons } = row;
    return { good: false, practice, session_id, canal, key, reasons };
  }
  const { columns } = tables[table];
  const values: Record<string, Value | null> = {};
  for (const { name, key, required } of columns)
    values[name] = row.values[name] ?? (key && !required ? "" : null);
  const key = columns.filter((column) => column.key && column.name !== "practice");
  const visit = hangsOnVisit(table) || table === "sessions";
  return {
    good: true,
    practice: values.practice ?? null,
    session_id: visit ? values.session_id : null,
    canal: columns.some(({ name }) => name === "canal") ? values.canal : null,
    key: key
      .map(({ name }) => values[name])
      .filter((value) => value !== null && value !== "")
      .join(" "),
    values: { ...values, fields: fieldsOf(table, row.values), match: row.match ?? null },
  };
}
