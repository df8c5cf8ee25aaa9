import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { completes, contradicts, valueColumns } from "./judge";
import { hangsOnVisit, list, storedKey } from "./stored-columns";

/**
 * Settles rows that share a key with an accepted row and may complete it, in the order of arrival. Each round
 * judges all of them against the accepted row and lets the first of each key complete it; as a completion fills
 * at least one empty column, there are at most as many rounds as columns, however often a key is repeated.
 */
export async function settleInRounds(client: pg.ClientBase, table: TableName): Promise<void> {
  const names = valueColumns(table);
  const key = storedKey(table);
  const match = key.map((name) => `e."${name}" = s."${name}"`).join(" and ");
  const keyed = hangsOnVisit(table) ? key.map((name) => `"${name}"`).join(", ") : list(key);
  for (let round = 0; round <= names.length + 1; round += 1) {
    const { rowCount } = await client.query(`
      update judged_${table} s set row_id = e.id, verdict = case
        when ${contradicts(table)} then 'contradiction'
        when ${completes(table)} then 'later'
        else 'repeated' end
      from "${table}" e where s.verdict = 'later' and ${match}`);
    if (!rowCount) return;
    const fill = names.map((name) => `"${name}" = coalesce(e."${name}", s."${name}")`);
    await client.query(`
      with first as (
        select distinct on (${keyed}) ctid as place from judged_${table}
        where verdict = 'later' order by ${keyed}, file_id, line
      ), chosen as (
        update judged_${table} j set verdict = 'completes' from first where j.ctid = first.place returning j.*
      )
      update "${table}" e set ${fill.length > 0 ? fill.join(", ") : "line = e.line"}
      from chosen s where ${match}`);
  }
  throw new Error(`rows of ${table} were not settled in ${names.length + 1} rounds`);
}
