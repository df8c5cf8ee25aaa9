import type pg from "pg";
import { type TableName, tableNames } from "@/lib/records/tables";

/**
 * A row brought again that was held and has been mended since bears the accepted row that it became: it is counted as repeated by its
 * file, and its place is one of the mended row's.
 *
 * @param holding temporary table of rows to hold, with file_id, line and digest
 */
export async function repeatMended(client: pg.ClientBase, holding: string): Promise<void> {
  const { rows } = await client.query<{ table: TableName }>(
    `select distinct h.table_name as "table" from ${holding} n join held h using (digest) where n.held_id is null and h.state = 'mended'`,
  );
  const concerned = new Set(rows.map((row) => row.table));
  for (const table of tableNames) {
    if (!concerned.has(table)) continue;
    await client.query(`
      with again as (
        select n.file_id, n.line, h.id, h.mend_id, h.file_id as first_file, h.line as first_line, coalesce((h.values ->> 'fields')::int, 0) as fields
        from ${holding} n join held h using (digest)
        where n.held_id is null and h.state = 'mended' and h.table_name = '${table}'
      ), bearers as (
        select a.id, t.id as row_id from (select distinct id, first_file, first_line from again) a
        join "${table}" t on t.file_id = a.first_file and t.line = a.first_line
        union all
        select a.id, w.row_id from (select distinct id, first_file, first_line from again) a
        join witnesses w on w.table_name = '${table}' and w.file_id = a.first_file and w.line = a.first_line
      ), noted as (
        update mended_rows r set places = r.places || n.places
        from (select id, mend_id, jsonb_agg(jsonb_build_object('file', file_id, 'line', line, 'as', 'repeated')) as places
          from again group by id, mend_id) n
        where r.held_id = n.id and r.mend_id = n.mend_id
      )
      insert into witnesses (table_name, row_id, file_id, line, fields)
      select distinct on (a.file_id, a.line) '${table}', b.row_id, a.file_id, a.line, a.fields from again a join bearers b on b.id = a.id
      on conflict do nothing`);
  }
}
