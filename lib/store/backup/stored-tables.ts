import type pg from "pg";

/** A table as a backup writes it. */
export type StoredTable = {
  readonly name: string;
  readonly columns: readonly string[];
  /** SQL: the order of its rows, which does not depend on the machine. */
  readonly order: string;
};

/** Prisma's own record of migrations: the manifest tells them. */
const HISTORY = "_prisma_migrations";

/** Every table but the history of migrations, each after those that it refers to. */
export async function storedTables(client: pg.ClientBase): Promise<StoredTable[]> {
  const { rows } = await client.query<StoredTable & { parents: string[] }>(
    `select c.relname as name,
       array(select a.attname::text from pg_attribute a where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
         and a.attgenerated = '' order by a.attnum) as columns,
       coalesce((select string_agg(quote_ident(a.attname) || case when a.attcollation <> 0 then ' collate "C"' else '' end, ', ' order by k.place)
         from pg_index i cross join unnest(i.indkey) with ordinality k (number, place)
         join pg_attribute a on a.attrelid = c.oid and a.attnum = k.number where i.indrelid = c.oid and i.indisprimary), '1') as "order",
       array(select distinct p.relname::text from pg_constraint f join pg_class p on p.oid = f.confrelid
         where f.conrelid = c.oid and f.contype = 'f' and f.confrelid <> c.oid) as parents
     from pg_class c where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and c.relname <> $1
     order by c.relname collate "C"`,
    [HISTORY],
  );
  const placed: StoredTable[] = [];
  const names = new Set<string>();
  let left = rows;
  while (left.length > 0) {
    const ready = left.filter(({ parents }) => parents.every((parent) => names.has(parent)));
    if (ready.length === 0) throw new Error("tables refer to each other in a circle");
    for (const { parents: _, ...table } of ready) {
      placed.push(table);
      names.add(table.name);
    }
    left = left.filter(({ name }) => !names.has(name));
  }
  return placed;
}

/** SQL that copies a table out, so that the same rows give the same bytes on every server. */
export function copyOut({ name, columns, order }: StoredTable): string {
  return `copy (select ${quoted(columns)} from ${quoted([name])} order by ${order}) to stdout`;
}

/** How values are written, in this transaction. */
export const plainlyWritten = `set local extra_float_digits = 1; set local datestyle = 'ISO, YMD'; set local intervalstyle = 'iso_8601';
  set local timezone = 'UTC'; set local bytea_output = 'hex'; set local client_encoding = 'UTF8'; set local statement_timeout = 0;
  set local idle_in_transaction_session_timeout = 0`;

/** SQL names, quoted. */
export function quoted(names: readonly string[]): string {
  return names.map((name) => `"${name.replaceAll('"', '""')}"`).join(", ");
}
