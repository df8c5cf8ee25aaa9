import { type TableName, tables } from "@/lib/records/tables";
import { storedColumns } from "./stored-columns";

/** SQL: both rows have a value and the values differ. */
export function differs(name: string, row = "s"): string {
  return `(e."${name}" is not null and ${row}."${name}" is not null and e."${name}" <> ${row}."${name}")`;
}

/** SQL giving the reasons (jsonb) of a judged row `j` that waits for its parent, or whose visit is not settled. */
export function waitingReasons(table: TableName): string {
  const parent = tables[table].parent ?? "sessions";
  const noVisit = reason(
    "'session_id'",
    "j.session_id",
    `format('there is no visit with this session_id yet%s; the row joins by itself when the visit arrives, or correct the number', case when j.practice is null then '' else ' in practice ' || j.practice end)`,
  );
  const noMatch = reason(
    "'session_id'",
    matchWords,
    "'no visit there at that time yet; the row joins by itself when the visit arrives, or write its number'",
  );
  const lost = `case when j.match is null then ${noVisit} else ${noMatch} end`;
  if (!storedColumns(table).some((column) => column.name === "canal") || table === "canals") {
    return `jsonb_build_array(${lost})`;
  }
  const noParent =
    parent === "instruments"
      ? reason(
          "'seq'",
          "format('%s %s %s', j.session_id, j.canal, j.seq)",
          "'there is no such use of an instrument yet; the row joins by itself when it arrives'",
        )
      : reason(
          "'canal'",
          "j.canal",
          "format('visit %s has no such canal; the row joins by itself when the canal arrives, or correct the name', j.session_id)",
        );
  return `jsonb_build_array(case when j.visit_id is null then ${lost} else ${noParent} end)`;
}

/** SQL giving the reasons of a row `j` that contradicts the accepted row `e`, or may not be brought in. */
export function contradictionReasons(table: TableName, names: readonly string[]): string {
  const differing = names.map(
    (name) =>
      `case when ${differs(name, "j")} then jsonb_build_array(${reason(
        `'${name}'`,
        shown(table, name, "j"),
        `format('an accepted row with the same key has "%s", and the first one stands; let this row go, or correct it at its source', ${shown(table, name, "e")})`,
      )}) else '[]' end`,
  );
  const several = reason(
    "'practice'",
    "coalesce(j.practice, '')",
    `format('visit %s is known in %s; write the practice into the row', ${tables[table].parent ? "j.session_id" : "''"}, j.in_practices)`,
  );
  const severalVisits = tables[table].parent
    ? reason(
        "'session_id'",
        matchWords,
        "format('more than one visit was there at that time (%s); write the number of the right one', j.candidates)",
      )
    : "null";
  const outside = reason(
    "'practice'",
    "coalesce(j.practice, j.in_practices, '')",
    "'you may bring in rows of your own practice only; ask the group''s record keeper'",
  );
  return `case j.verdict when 'several-practices' then jsonb_build_array(${several})
    when 'several-visits' then jsonb_build_array(${severalVisits})
    when 'outside-reach' then jsonb_build_array(${outside})
    else ${differing.join(" || ") || "'[]'::jsonb"} end`;
}

/** SQL giving the row as the record format writes it. */
export function asWritten(table: TableName, row = "j"): string {
  const names = tables[table].columns.map((column) => column.name);
  const pairs = names.map((name) => `'${name}', ${shown(table, name, row)}`);
  return `jsonb_strip_nulls(jsonb_build_object(${pairs.join(", ")}))`;
}

/** SQL: where and when a row says it was, as `chair NORTH-2, 2026-07-03 09:10 UTC, tooth 36`. */
const matchWords = `concat_ws(', ', 'chair ' || (j.match ->> 'chair'),
  to_char((j.match ->> 'at')::timestamptz at time zone 'UTC', 'YYYY-MM-DD HH24:MI') || ' UTC', 'tooth ' || (j.match ->> 'tooth'))`;

function reason(column: string, found: string, remedy: string): string {
  return `jsonb_build_object('column', ${column}, 'found', ${found}, 'remedy', ${remedy},
    'sentence', format('%s, line %s, %s: found "%s"; %s.', i.name, j.line, ${column}, ${found}, ${remedy}))`;
}

function shown(table: TableName, name: string, row: string): string {
  const column = tables[table].columns.find((one) => one.name === name);
  // A patient stays out of every sentence, even as a hash.
  if (column?.type === "patient")
    return `case when ${row}."${name}" is null then null else 'another patient' end`;
  if (column?.type === "flag")
    return `case ${row}."${name}" when true then 'yes' when false then 'no' end`;
  if (column?.type === "instant")
    return `to_char(${row}."${name}" at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
  return `${row}."${name}"::text`;
}
