import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { changing } from "../import/changing";
import { heldDigests, newDigests } from "./held-digests";
import { replacer } from "./replacer";

/** Where rows hold pseudonyms within JSON or text: table, key and columns. */
const written: readonly (readonly [
  table: string,
  key: readonly string[],
  columns: readonly string[],
])[] = [
  ["sessions", ["id"], ["case_id"]],
  ["held", ["id"], ["raw", "values", "reasons", "key", "settled_reason"]],
  ["mends", ["id"], ["changes", "reason"]],
  ["mended_rows", ["mend_id", "held_id"], ["before"]],
  ["corrections", ["id"], ["key", "before", "after"]],
];

/**
 * Puts another pseudonym in the place of every patient's, in one transaction and with no import or mend between: whoever was one
 * patient is one afterwards. Keeps the new key's fingerprint with it.
 *
 * @param wrapped the new pseudonym of an old one
 * @returns how many patients there are
 * @throws Refused where the reach is not everything, or the fingerprint kept is not `before`
 */
export async function wrapPatients(
  reach: RecordsReach,
  fingerprint: { readonly before: string; readonly after: string },
  wrapped: (pseudonym: string) => string,
): Promise<number> {
  if (reach.practices !== null) throw new Refused("The patient key is that of the whole group.");
  return changing(async (client) => {
    await requireFingerprint(client, fingerprint.before);
    const known = await pseudonyms(client);
    const after = new Map(known.map((one) => [one, wrapped(one)]));
    await replaceWhole(client, after);
    await heldDigests(client);
    const replace = replacer(after);
    for (const [table, key, columns] of written)
      await replaceWithin(client, table, key, columns, replace);
    await newDigests(client);
    await client.query(
      `insert into settings (key, value) values ('patient key fingerprint', $1)
       on conflict (key) do update set value = excluded.value`,
      [fingerprint.after],
    );
    return known.length;
  });
}

async function requireFingerprint(client: pg.ClientBase, before: string): Promise<void> {
  const { rows } = await client.query<{ value: string }>(
    "select value from settings where key = 'patient key fingerprint' for update",
  );
  if (rows[0] && rows[0].value !== before)
    throw new Refused(
      "The patient key of this home is not the one these records were read with; put the right key back first.",
    );
}

/** Every pseudonym there is: of accepted rows, and of whatever was held, mended or corrected. */
async function pseudonyms(client: pg.ClientBase): Promise<string[]> {
  const inside = (column: string, table: string) =>
    `select jsonb_path_query(${column}, '$.**.patient') #>> '{}' from ${table}`;
  const { rows } = await client.query<{ patient: string }>(`
    select distinct patient from (
      select patient from sessions union select patient from canal_facts union select patient from visit_facts
      union ${inside("raw", "held")} union ${inside('"values"', "held")}
      union ${inside("before", "mended_rows")} union ${inside("changes", "mends")}
      union select jsonb_path_query(changes, '$.**.patient.to') #>> '{}' from mends
      union ${inside("before", "corrections")} union ${inside("after", "corrections")}
    ) p (patient) where patient ~ '^[0-9a-f]{32}$'`);
  return rows.map(({ patient }) => patient);
}

async function replaceWhole(client: pg.ClientBase, after: ReadonlyMap<string, string>) {
  await client.query(
    "create temp table wrapped (before text primary key, after text not null) on commit drop",
  );
  await client.query("insert into wrapped select * from unnest($1::text[], $2::text[])", [
    [...after.keys()],
    [...after.values()],
  ]);
  await client.query("analyze wrapped");
  for (const table of ["sessions", "canal_facts", "visit_facts"])
    await client.query(
      `update ${table} t set patient = w.after from wrapped w where w.before = t.patient`,
    );
}

/** Row by row where 32 hexadecimal digits stand together, a batch at a time. */
async function replaceWithin(
  client: pg.ClientBase,
  table: string,
  key: readonly string[],
  columns: readonly string[],
  replace: (text: string) => string,
) {
  const cells = columns.map((column) => `"${column}"::text`);
  const types = await typesOf(client, table, columns);
  const ordered = key.map((name) => `"${name}"`).join(", ");
  for (let last: unknown[] | undefined; ; ) {
    const { rows } = await client.query<unknown[]>({
      text: `select ${ordered}, ${cells.join(", ")} from ${table}
        where concat_ws(' ', ${cells.join(", ")}) ~ '[0-9a-f]{32}'
        ${last ? `and (${ordered}) > (${key.map((_, n) => `$${n + 1}`).join(", ")})` : ""}
        order by ${ordered} limit 2000`,
      values: last ?? [],
      rowMode: "array",
    });
    const end = rows.at(-1);
    if (!end) return;
    for (const row of rows) {
      const texts = row.slice(key.length) as (string | null)[];
      const replaced = texts.map((text) => text && replace(text));
      if (replaced.every((text, n) => text === texts[n])) continue;
      const sets = columns.map((name, n) => `"${name}" = $${n + 1}::${types[n]}`);
      const at = key.map((name, n) => `"${name}" = $${columns.length + n + 1}`);
      await client.query(`update ${table} set ${sets.join(", ")} where ${at.join(" and ")}`, [
        ...replaced,
        ...row.slice(0, key.length),
      ]);
    }
    last = end.slice(0, key.length);
  }
}

async function typesOf(client: pg.ClientBase, table: string, columns: readonly string[]) {
  const { rows } = await client.query<{ name: string; type: string }>(
    `select attname as name, format_type(atttypid, atttypmod) as type from pg_attribute
     where attrelid = $1::regclass and attname = any($2)`,
    [table, columns],
  );
  return columns.map((column) => rows.find(({ name }) => name === column)?.type ?? "text");
}
