import type pg from "pg";

/**
 * By what a held row's digest was made (lib/store/import: settle, hold-accepted), as SQL over held `h` and, where it was mended, the first
 * `before` of its mends. A row read again finds its held one by it.
 */
const ways = [
  "h.table_name || h.raw::text",
  `h.table_name || (h."values" - 'candidate_visits')::text`,
  `'instruments after separation' || (h."values" - 'candidate_visits')::text`,
  `h.table_name || ((b.before -> 'row' -> 'values') - 'candidate_visits')::text`,
  `'instruments after separation' || ((b.before -> 'row' -> 'values') - 'candidate_visits')::text`,
];

const from = `held h left join lateral (
  select before from mended_rows m where m.held_id = h.id order by m.mend_id limit 1) b on true`;

/** Notes, before pseudonyms change, how each digest that rests on one was made. */
export async function heldDigests(client: pg.ClientBase): Promise<void> {
  const cases = ways.map((way, n) => `when md5(${way}) = h.digest then ${n}`);
  await client.query(`
    create temp table digests on commit drop as
    select h.id, case ${cases.join(" ")} end as way from ${from}
    where concat(h.raw::text, h."values"::text, b.before::text) ~ '[0-9a-f]{32}'`);
}

/** Makes the same digests of what the rows say now. */
export async function newDigests(client: pg.ClientBase): Promise<void> {
  const cases = ways.map((way, n) => `when ${n} then md5(${way})`);
  await client.query(`
    update held t set digest = n.digest
    from (select h.id, case d.way ${cases.join(" ")} end as digest from ${from} join digests d on d.id = h.id where d.way is not null) n
    where n.id = t.id`);
}
