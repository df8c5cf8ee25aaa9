import type { Column } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { hangsOnVisit } from "../import/stored-columns";

/**
 * SQL of a table's rows as the record format writes them, the accepted ones first and then those that are held, so that they are held again
 * elsewhere: every column as text, moments in UTC, teeth by ISO 3950, patients as their kept hash. Rows of practices outside the
 * reach of whoever sent them are no part of the records and are left out, as are those let go.
 *
 * @param practices SQL of the practices' codes, an array of text
 */
export function rowsAsWritten(table: TableName, practices: string): string {
  const { columns } = tables[table];
  const names = columns.map(({ name }) => `"${name}"`).join(", ");
  return `select ${names} from (${accepted(table, practices)} union all ${held(table, practices)}) all_rows order by place, file_id, line`;
}

function accepted(table: TableName, practices: string): string {
  const { columns } = tables[table];
  const visit = hangsOnVisit(table);
  const stored = columns.map((column) => {
    const { name } = column;
    if (visit && (name === "practice" || name === "session_id")) return `v."${name}" as "${name}"`;
    return `${written(column, `t."${name}"`)} as "${name}"`;
  });
  const from = visit ? `"${table}" t join sessions v on v.id = t.visit_id` : `"${table}" t`;
  const own = `select 0 as place, t.file_id, t.line, ${stored.join(", ")} from ${from}
    where ${visit ? "v" : "t"}.practice = any(${practices})`;
  return table === "exceptions" ? `${own} union all ${entered(practices)}` : own;
}

/** What was entered on a page and counts, as a row of exceptions; its free text stays here. */
function entered(practices: string): string {
  const values: Readonly<Record<string, string>> = {
    session_id: "v.session_id",
    practice: "v.practice",
    canal: "e.canal",
    criterion: "e.criterion",
    reason: "e.reason",
    entered_at: moment("e.at"),
  };
  const columns = tables.exceptions.columns.map(
    ({ name }) => `${values[name] ?? "null"} as "${name}"`,
  );
  return `select 0, 0, e.id, ${columns.join(", ")} from entered_exceptions e
    join sessions v on v.practice = e.practice and v.session_id = e.session_id
    where e.withdrawn_at is null and v.practice = any(${practices}) and not exists (
      select from exceptions x where x.visit_id = v.id and x.canal = e.canal and x.criterion = e.criterion)`;
}

/** A held row has its cells as read, or, where only its relation to others kept it out, its checked values. */
function held(table: TableName, practices: string): string {
  const columns = tables[table].columns.map(({ name, type }) => {
    const value = `(h.values ->> '${name}')`;
    const checked =
      type === "flag"
        ? `case ${value} when 'true' then 'yes' when 'false' then 'no' end`
        : name === "tooth_notation"
          ? `case when h.values ->> 'tooth' is null then null else 'fdi' end`
          : value;
    return `case when h.values is null then h.raw ->> '${name}' else ${checked} end as "${name}"`;
  });
  return `select 1, h.file_id, h.line, ${columns.join(", ")} from held h
    where h.table_name = '${table}' and h.state = 'held' and h.kind <> 'outside-reach' and h.raw <> '{}'
      and coalesce(h.practice, (select min(v.practice) from sessions v where v.session_id = h.session_id),
        (${practices})[1]) = any(${practices})`;
}

function written({ name, type }: Column, value: string): string {
  if (name === "tooth_notation") return "'fdi'";
  if (type === "flag") return `case ${value} when true then 'yes' when false then 'no' end`;
  if (type === "instant") return moment(value);
  return `${value}::text`;
}

function moment(value: string): string {
  return `to_char(${value} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
}
