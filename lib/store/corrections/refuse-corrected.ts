import type pg from "pg";
import { earlierPlaces } from "./earlier-version";

/**
 * Why the places in the temporary tables `files_back` and `lines_back` cannot be taken back: a correction rests on their rows, on either
 * side. Places that only repeat the old version of a corrected row are let off here, as nothing rests on them.
 *
 * @returns one sentence; undefined where nothing stands in the way
 */
export async function refuseCorrected(client: pg.ClientBase): Promise<string | undefined> {
  const { rows } = await client.query<{
    id: number;
    table: string;
    key: string;
    practice: string;
  }>(`
    select c.id, c.table_name as "table", c.key, c.practice from corrections c
    cross join lateral (
      select r.file_id, r.line from jsonb_to_record(c.before -> 'row') as r (file_id int, line int)
      union all select r.file_id, r.line from jsonb_to_record(c.after -> 'row') as r (file_id int, line int)
      union all select p.file, p.line from jsonb_to_recordset((c.before -> 'witnesses') || (c.after -> 'heldPlaces')) as p (file int, line int)
    ) places
    where c.undone_at is null and (places.file_id in (select id from files_back)
      or (places.file_id, places.line) in (select file_id, line from lines_back)) order by c.id desc limit 1`);
  const [found] = rows;
  if (found)
    return `A correction rests on one of these rows (${found.table} ${found.key} of ${found.practice}); take correction ${found.id} back first, on the page Corrections.`;
  await client.query(
    `delete from witnesses where table_name = '${earlierPlaces}' and (file_id in (select id from files_back)
       or (file_id, line) in (select file_id, line from lines_back))`,
  );
  return undefined;
}
