import { type TableName, tables } from "@/lib/records/tables";
import { valueColumns } from "../import/judge";
import { hangsOnVisit, storedKey } from "../import/stored-columns";

/**
 * SQL: the held rows `h` that contradict an accepted row `e` of their key, with `n` what they say. A row whose
 * accepted one is gone is not among them.
 */
export function versions(table: TableName): string {
  const own = storedKey(table).filter((name) => name !== "visit_id");
  const same = own.map((name) => `e."${name}" = n."${name}"`).join(" and ");
  const visit = hangsOnVisit(table)
    ? `join sessions v on v.session_id = h.values ->> 'session_id'
         and (h.values ->> 'practice' is null or v.practice = h.values ->> 'practice')
       join "${table}" e on e.visit_id = v.id and ${same}`
    : `join "${table}" e on ${same}`;
  return `held h cross join lateral jsonb_populate_record(null::"${table}", h.values) n ${visit}
    where h.table_name = '${table}' and h.state = 'held' and h.kind = 'contradiction' and h.values is not null`;
}

/** SQL: the practice of the accepted row of `versions`. */
export function practiceOf(table: TableName): string {
  return hangsOnVisit(table) ? "v.practice" : "e.practice";
}

/** SQL: the local day that the accepted row of `versions` counts on; null for a spell of a person. */
export function dayOf(table: TableName): string {
  if (hangsOnVisit(table)) return "v.local_day";
  if (table === "sessions") return "e.local_day";
  return table === "upkeep" ? "e.day" : "null::date";
}

/** SQL: both rows are of the same key. */
export function sameKey(table: TableName, one: string, other: string): string {
  return storedKey(table)
    .map((name) => `${one}."${name}" = ${other}."${name}"`)
    .join(" and ");
}

/** SQL: the value of a column once the newer version is taken: what it does not say keeps the old. */
export function taken(name: string): string {
  return `coalesce(n."${name}", e."${name}")`;
}

/** SQL: everything that row `n` says, row `b` says too. */
export function saysNothingElse(table: TableName, n: string, b: string): string {
  return valueColumns(table)
    .map((name) => `(${n}."${name}" is null or ${n}."${name}" is not distinct from ${b}."${name}")`)
    .join(" and ");
}

/** SQL: with the newer version taken, the values together would break a rule of the format (lib/intake/row-rules). */
export function brokenTogether(table: TableName): string {
  switch (table) {
    case "sessions":
      return `coalesce(${taken("ended_at")} < ${taken("started_at")}
        or ${taken("ended_at")} > ${taken("started_at")} + interval '24 hours', false)`;
    case "instruments":
      return `coalesce(${taken("separated")} > coalesce(${taken("uses")}, 1), false)`;
    case "people":
      return `coalesce(${taken("to")} < e."from", false)`;
    default:
      return "false";
  }
}

/** Of a visit: what hangs on it, or itself. SQL giving the id of the visit of accepted row `e`. */
export function visitOf(table: TableName): string {
  if (table === "sessions") return "e.id";
  return tables[table].parent ? "e.visit_id" : "null::bigint";
}
