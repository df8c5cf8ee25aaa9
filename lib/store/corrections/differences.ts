import type { RecordsReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import { type TableName, tableNames } from "@/lib/records/tables";
import { pool } from "../database";
import { brokenTogether, practiceOf, versions } from "./versions-sql";

/** A newer version of an accepted row that a person is asked about. */
export type Difference = {
  /** Of the held row. */
  readonly id: string;
  readonly table: TableName;
  readonly practice: string;
  readonly key: string;
  readonly zone: string;
  readonly accepted: Values;
  readonly newer: Values;
  /** With what it does not say, the newer version would break a rule of the format. */
  readonly broken: boolean;
  readonly from: { readonly file: string; readonly line: number; readonly importId: number };
  readonly first: { readonly file: string; readonly line: number; readonly importId: number };
};

export type DifferencesAsked = {
  readonly practice?: string | undefined;
  /** One held row only. */
  readonly row?: string | undefined;
  readonly limit: number;
  readonly offset: number;
};

/** The newer versions that wait for an answer, in the order of reading, with how many there are. */
export async function differencesNow(
  reach: RecordsReach,
  asked: DifferencesAsked,
): Promise<{ rows: Difference[]; count: number }> {
  const all = tableNames.map(ofTable).join(" union all ");
  const where = `($1::text[] is null or d.practice = any($1)) and ($2::text is null or d.practice = $2)
    and ($3::bigint is null or d.held_id = $3)`;
  const parameters = [reach.practices, asked.practice ?? null, asked.row ?? null];
  const [{ rows }, counted] = await Promise.all([
    pool().query<Difference>(
      `select d.held_id::text as id, d."table", d.practice, d.key, p.zone, d.accepted, d.newer, d.broken,
         ${place("nf", "d.new_line")} as "from", ${place("f", "d.line")} as first
       from (${all}) d join practices p on p.code = d.practice
       join import_files nf on nf.id = d.new_file join import_files f on f.id = d.file_id
       where ${where} order by d.new_file, d.new_line, d.held_id limit $4 offset $5`,
      [...parameters, asked.limit, asked.offset],
    ),
    pool().query<{ count: number }>(
      `select count(*)::int as count from (${all}) d where ${where}`,
      parameters,
    ),
  ]);
  return { rows, count: counted.rows[0]?.count ?? 0 };
}

function ofTable(table: TableName): string {
  return `
    select h.id as held_id, '${table}' as "table", ${practiceOf(table)} as practice, h.key, ${brokenTogether(table)} as broken,
      jsonb_strip_nulls(to_jsonb(e)) as accepted, jsonb_strip_nulls(to_jsonb(n)) as newer,
      h.file_id as new_file, h.line as new_line, e.file_id, e.line
    from ${versions(table)}`;
}

function place(file: string, line: string): string {
  return `jsonb_build_object('file', ${file}.name, 'line', ${line}, 'importId', ${file}.import_id)`;
}
