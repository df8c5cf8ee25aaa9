import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { sameKey, saysNothingElse } from "./versions-sql";

/**
 * A row that says again what an accepted row said before it was corrected is no contradiction: an old file that is brought
 * again asks nothing anew. It counts as repeated, and its place stands with the correction whose old version it bears.
 *
 * Runs between judging and holding (lib/store/import/publish).
 */
export async function recogniseEarlierVersions(
  client: pg.ClientBase,
  table: TableName,
): Promise<void> {
  const { rows } = await client.query<{ any: boolean }>(
    `select exists (select from judged_${table} where verdict = 'contradiction' and held_id is null)
       and exists (select from corrections where table_name = '${table}' and undone_at is null) as any`,
  );
  if (!rows[0]?.any) return;
  await client.query(`
    with earlier as (
      select distinct on (j.file_id, j.line) j.file_id, j.line, j.fields, c.id
      from judged_${table} j
      join corrections c on c.table_name = '${table}' and c.undone_at is null
      cross join lateral jsonb_populate_record(null::"${table}", c.before -> 'row') b
      where j.verdict = 'contradiction' and j.held_id is null
        and ${sameKey(table, "j", "b")} and ${saysNothingElse(table, "j", "b")}
      order by j.file_id, j.line, c.id desc
    ), known as (
      update judged_${table} j set verdict = 'repeated' from earlier e
      where e.file_id = j.file_id and e.line = j.line and j.verdict = 'contradiction'
    )
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select '${earlierPlaces}', id, file_id, line, fields from earlier on conflict do nothing`);
}

/** How `witnesses` calls a place that bears the old version of a correction. */
export const earlierPlaces = "corrections";
