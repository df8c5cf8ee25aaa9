import type pg from "pg";
import type { Column } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { hangsOnVisit } from "../import/stored-columns";
import { rowsByCursor } from "./rows-by-cursor";

/** Cells of the record format by column; what is not recorded is not there. */
export type WrittenCells = Readonly<Record<string, string | null>>;

/**
 * The accepted rows of a table as the record format writes them: the practice in every row, moments with Z, the tooth in two
 * digits by ISO 3950, the patient as its pseudonym. Exceptions that were entered on a page follow, as far as they count.
 *
 * @param zone IANA zone of the practices
 * @param practices null is all
 */
export async function* acceptedRows(
  client: pg.ClientBase,
  table: TableName,
  zone: string,
  practices: readonly string[] | null,
): AsyncGenerator<WrittenCells> {
  const hangs = hangsOnVisit(table);
  const practice = hangs ? "v.practice" : "t.practice";
  const from = hangs ? `"${table}" t join sessions v on v.id = t.visit_id` : `"${table}" t`;
  const cells = tables[table].columns.map((column) => `${cell(column, hangs)} as "${column.name}"`);
  const where = `p.zone = $1 and ($2::text[] is null or p.code = any($2))`;
  yield* rowsByCursor<Record<string, string | null>>(
    client,
    `select ${cells.join(", ")} from ${from} join practices p on p.code = ${practice} where ${where} order by t.id`,
    [zone, practices],
  );
  if (table === "exceptions")
    yield* rowsByCursor<Record<string, string | null>>(client, entered(where), [zone, practices]);
}

/** Entered exceptions that count (as lib/store/exceptions/exception-list has them): by code, never their note or who wrote them. */
function entered(where: string): string {
  return `
    select e.session_id, nullif(e.canal, '') as canal, e.criterion, e.practice, e.reason, null as entered_by,
      ${moment("e.at")} as entered_at
    from entered_exceptions e join sessions v on v.practice = e.practice and v.session_id = e.session_id
    join practices p on p.code = e.practice
    where ${where} and e.withdrawn_at is null
      and (e.canal = '' or exists (select from canals c where c.visit_id = v.id and c.canal = e.canal))
      and not exists (select from exceptions x where x.visit_id = v.id and x.canal = e.canal and x.criterion = e.criterion)
    order by e.id`;
}

function cell(column: Column, hangs: boolean): string {
  if (hangs && (column.name === "practice" || column.name === "session_id"))
    return `v."${column.name}"`;
  // The tooth is kept by ISO 3950, whatever it was read in.
  if (column.name === "tooth_notation") return "'fdi'";
  const value = `t."${column.name}"`;
  switch (column.type) {
    case "instant":
      return moment(value);
    case "day":
      return `${value}::text`;
    case "flag":
      return `case ${value} when true then 'yes' when false then 'no' end`;
    case "number":
      // Every digit, and never with an exponent.
      return `trim_scale(${value}::text::numeric)::text`;
    case "whole":
    case "count":
      return `${value}::text`;
    default:
      return `nullif(${value}, '')`;
  }
}

function moment(value: string): string {
  return `to_char(${value} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
}
