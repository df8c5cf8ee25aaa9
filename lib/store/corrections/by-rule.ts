import type pg from "pg";
import { tableNames } from "@/lib/records/tables";
import { takeIn } from "./take-in";
import { practiceOf, versions } from "./versions-sql";

type Newer = {
  readonly id: string;
  readonly table: string;
  readonly row: string;
  readonly practice: string;
  readonly rule: "newer" | "first";
};

/**
 * Settles the newer versions that an import brought by the rule of their practice: taken, or let go. Only a version from
 * a later import than the accepted one is settled so; where one import says two things of a row, or a person has
 * taken the correction back before, it is asked.
 *
 * @returns whether anything was settled: then everything held is to be judged anew and the facts renewed
 */
export async function followRules(client: pg.ClientBase, importId: number): Promise<boolean> {
  const { rows } = await client.query<{ any: boolean }>(
    `select exists (select from practices where newer_versions <> 'ask')
       and exists (select from held where kind = 'contradiction' and state = 'held') as any`,
  );
  if (!rows[0]?.any) return false;
  const found = await newerOf(client, importId);
  const versionsOf = new Map<string, number>();
  for (const one of found) versionsOf.set(rowOf(one), (versionsOf.get(rowOf(one)) ?? 0) + 1);
  const newest = found.filter((one) => one.rule === "newer" && versionsOf.get(rowOf(one)) === 1);
  const first = found.filter((one) => one.rule === "first");
  const taken = await takeIn(
    client,
    newest.map((one) => one.id),
    { by: ruleName, rule: "newer", practices: null },
  );
  await letGoByRule(
    client,
    first.map((one) => one.id),
  );
  return taken.length + first.length > 0;
}

/** Stands where a person's name does. */
export const ruleName = "rule of the practice";

function rowOf({ table, row }: Newer): string {
  return `${table}/${row}`;
}

async function newerOf(client: pg.ClientBase, importId: number): Promise<Newer[]> {
  const files = `(select id from import_files where import_id = ${Number(importId)})`;
  const ofTables = tableNames.map(
    (table) => `
      select h.id, h.file_id, h.line, '${table}' as "table", e.id as row, ${practiceOf(table)} as practice
      from ${versions(table)}
        and (h.file_id in ${files} or h.id in (select row_id from witnesses where table_name = 'held' and file_id in ${files}))
        and e.file_id not in ${files}
        and not exists (select from witnesses w where w.table_name = '${table}' and w.row_id = e.id and w.file_id in ${files})
        and not exists (select from corrections c where c.held_id = h.id)`,
  );
  const { rows } = await client.query<Newer>(
    `select n.id::text, n."table", n.row::text, n.practice, p.newer_versions as rule
     from (${ofTables.join(" union all ")}) n join practices p on p.code = n.practice
     where p.newer_versions <> 'ask' order by n.file_id, n.line, n.id`,
  );
  return rows;
}

async function letGoByRule(client: pg.ClientBase, ids: readonly string[]) {
  if (ids.length === 0) return;
  await client.query(
    `update held set state = 'let-go', settled_by = $2, settled_at = now(), settled_reason = 'The first version stands.'
     where id = any($1)`,
    [ids, ruleName],
  );
  await client.query(
    `update import_files f set held = f.held - n.rows, let_go = f.let_go + n.rows
     from (select file_id, count(*)::int as rows from (
       select file_id from held where id = any($1)
       union all select file_id from witnesses where table_name = 'held' and row_id = any($1)
     ) places group by file_id) n where n.file_id = f.id`,
    [ids],
  );
  await client.query(
    `insert into touched select v.id from held h join sessions v on v.session_id = h.session_id
       and (h.practice is null or h.practice = v.practice) where h.id = any($1)`,
    [ids],
  );
}
