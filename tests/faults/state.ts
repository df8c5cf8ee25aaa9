import { tableNames } from "@/lib/records/tables";
import { pool } from "@/lib/store/database";
import { hangsOnVisit } from "@/lib/store/import/stored-columns";

/** What a database holds, by section: a hash each, of numbers and times that differ from one run to the next nothing. */
export type State = Readonly<Record<string, string>>;

const visit = "select practice || '/' || session_id from sessions where id";
const file = (id: string) => `(select name from import_files where id = ${id})`;
const facts = (table: string) =>
  `select to_jsonb(t) - 'visit_id' || jsonb_build_object('visit', (${visit} = t.visit_id)) from ${table} t`;
const whole = (table: string) => `select to_jsonb(t) from ${table} t`;

/** SQL of each section: one JSON a row. */
const sections: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    tableNames.map((table) => [
      table,
      `select to_jsonb(t) - '{id,visit_id,file_id}'::text[] || jsonb_build_object('file', ${file("t.file_id")}
         ${hangsOnVisit(table) ? `, 'visit', (${visit} = t.visit_id)` : ""}) from "${table}" t`,
    ]),
  ),
  witnesses: `select jsonb_build_array(w.table_name, ${file("w.file_id")}, w.line, w.fields) from witnesses w`,
  held: `select to_jsonb(h) - '{id,file_id,mend_id,settled_at,values}'::text[] || jsonb_build_object('file', ${file("h.file_id")},
    'values', h.values - 'candidate_visits') from held h`,
  imports: `select jsonb_build_array(i.state, i.practices, f.name, f.table_name, f.read, f.accepted, f.repeated, f.held, f.let_go)
    from imports i left join import_files f on f.import_id = i.id where i.state in ('done', 'undone')`,
  mends: "select to_jsonb(m) - '{id,at,undone_at}'::text[] from mends m",
  mendedRows:
    "select jsonb_build_array(before -> 'row' -> 'line', jsonb_array_length(places)) from mended_rows",
  corrections: "select to_jsonb(c) - '{id,row_id,held_id,at,undone_at}'::text[] from corrections c",
  audits: whole("audits"),
  texts: whole("audit_texts"),
  signed: "select jsonb_build_array(audit_id, version, computed_sha256) from signed_audits",
  practices: whole("practices"),
  chairs: whole("chairs"),
  clinicians: whole("clinicians"),
  settings: "select to_jsonb(s) from settings s where key <> 'revision of the records'",
  canalFacts: facts("canal_facts"),
  visitFacts: facts("visit_facts"),
};

/** The state of the database that the pool is connected to. */
export async function stateNow(): Promise<State> {
  const parts = Object.entries(sections).map(
    ([name, sql]) =>
      `select '${name}' as name, coalesce(md5(string_agg(row::text, E'\\n' order by row::text collate "C")), '') as hash from (${sql}) t (row)`,
  );
  const { rows } = await pool().query<{ name: string; hash: string }>(parts.join(" union all "));
  return Object.fromEntries(rows.map(({ name, hash }) => [name, hash]));
}

/** The sections in which two states differ. */
export function differing(one: State, other: State, only = Object.keys(sections)): string[] {
  return only.filter((name) => one[name] !== other[name]);
}

/** What there was before audits, mends and corrections. */
export const recordSections = [
  ...tableNames,
  ...["witnesses", "held", "imports", "chairs", "clinicians", "canalFacts", "visitFacts"],
];
