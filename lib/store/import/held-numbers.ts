import type pg from "pg";

/**
 * Makes the temporary table `numbers_before`: the numbers of held rows that this transaction let in. One that is held after all, as a
 * use after a separation is at every undo, keeps its number, so that addresses that name it go on leading to it.
 */
export async function noteNumbers(client: pg.ClientBase): Promise<void> {
  await client.query(
    "create temp table if not exists numbers_before (id bigint, table_name text, file_id int, line int) on commit drop",
  );
}

/** SQL: the number that row `s` of the table had as a held row, or the next one. */
export function heldNumber(table: string): string {
  return `coalesce((
    select max(n.id) from numbers_before n
    where n.table_name = '${table}' and n.file_id = s.file_id and n.line = s.line and not exists (select from held o where o.id = n.id)
  ), nextval(pg_get_serial_sequence('held', 'id')))`;
}
