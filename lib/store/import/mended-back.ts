import type pg from "pg";

/**
 * What becomes of the held rows that mends have let in, once the files in `files_back` are taken back: each passes to its
 * next place; one without goes, as its accepted row went.
 */
export async function mendedBack(client: pg.ClientBase): Promise<void> {
  await client.query(`
    update mended_rows r set places = coalesce((
      select jsonb_agg(p order by n) from jsonb_array_elements(r.places) with ordinality as of (p, n)
      where (p ->> 'file')::int not in (select id from files_back)), '[]')
    from held h where h.id = r.held_id and h.mend_id = r.mend_id and h.state = 'mended'
      and exists (select from jsonb_array_elements(r.places) p where (p ->> 'file')::int in (select id from files_back))`);
  await client.query(`
    update held h set file_id = (r.places -> 0 ->> 'file')::int, line = (r.places -> 0 ->> 'line')::int
    from mended_rows r where r.held_id = h.id and r.mend_id = h.mend_id and h.state = 'mended' and r.places <> '[]'
      and h.file_id in (select id from files_back)`);
  await client.query(
    "delete from held where state = 'mended' and file_id in (select id from files_back)",
  );
  await client.query(
    "delete from mended_rows r where not exists (select from held h where h.id = r.held_id)",
  );
}
