import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { type TableName, tableNames } from "@/lib/records/tables";
import { pool } from "../database";
import { hangsOnVisit, storedColumns } from "../import/stored-columns";

/**
 * Which records an audit rests on, as their content and never as their numbers in the database: the same rows brought in again are the
 * same records.
 */
export type RecordVersions = {
  /** Rows of each table of the record format. */
  readonly counts: Readonly<Record<string, number>>;
  /** By practice/visit, the first 16 hexadecimal digits of the SHA-256 of the visit's rows, held ones about it among them. */
  readonly visits: Readonly<Record<string, string>>;
  /** The same by practice of what hangs on no visit: upkeep in the period, and who bears which code. */
  readonly others: Readonly<Record<string, string>>;
};

/** The versions of all records of the period within the reach. */
export async function recordVersions(reach: FiguresReach, period: Period): Promise<RecordVersions> {
  const { rows } = await pool().query<{
    kind: "count" | "visits" | "others";
    key: string;
    value: string;
  }>(
    `with visits as (
       select id, practice, session_id, min(session_id collate "C") over (partition by practice, patient) as of_patient from sessions
       where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
     ), pieces ("table", hangs, key, piece) as (${tableNames.map(piecesOf).join(" union all ")} union all ${enteredPieces} union all ${heldPieces})
     select 'count' as kind, "table" as key, count(*)::text as value from pieces where "table" <> 'held' group by "table"
     union all
     select case when hangs then 'visits' else 'others' end, key, left(encode(sha256(convert_to(
       string_agg("table" || ' ' || piece, E'\\n' order by "table" collate "C", piece collate "C"), 'UTF8')), 'hex'), 16)
     from pieces group by hangs, key`,
    [reach.practices, period.from, period.until],
  );
  const of = (kind: string) =>
    rows
      .filter((row) => row.kind === kind)
      .sort((one, other) => (one.key < other.key ? -1 : 1))
      .map(({ key, value }) => [key, value] as const);
  return {
    counts: Object.fromEntries(of("count").map(([key, value]) => [key, Number(value)])),
    visits: Object.fromEntries(of("visits")),
    others: Object.fromEntries(of("others")),
  };
}

/**
 * SQL: the rows of a table as text, with what they hang on. A patient is the first visit of theirs in the period: the pseudonym changes when
 * the key is rotated, and the records do not.
 */
function piecesOf(table: TableName): string {
  const cells = storedColumns(table).map(({ name, type }) => {
    if (table === "sessions" && name === "patient") return "v.of_patient";
    if (name === "case_id") return `regexp_replace(t.case_id, '[0-9a-f]{32}', '*', 'g')`;
    return type === "timestamptz" ? `extract(epoch from t."${name}")::text` : `t."${name}"::text`;
  });
  const piece = `jsonb_build_array(${cells.join(", ")})::text`;
  if (table === "sessions")
    return `select '${table}' as "table", true as hangs, v.practice || '/' || v.session_id as key, ${piece} as piece from sessions t join visits v on v.id = t.id`;
  if (hangsOnVisit(table))
    return `select '${table}', true, v.practice || '/' || v.session_id, ${piece} from "${table}" t join visits v on v.id = t.visit_id`;
  const within =
    table === "upkeep"
      ? "and t.day >= $2::date and t.day < $3::date"
      : `and t."from" < $3::date and (t."to" is null or t."to" >= $2::date)`;
  return `select '${table}', false, t.practice, ${piece} from "${table}" t where ($1::text[] is null or t.practice = any($1)) ${within}`;
}

/** Exceptions that were entered on a page count in figures as those of files do. */
const enteredPieces = `select 'exceptions', true, v.practice || '/' || v.session_id, jsonb_build_array(e.canal, e.criterion, e.reason)::text
  from entered_exceptions e join visits v using (practice, session_id) where e.withdrawn_at is null`;

/** As it was read, but for the patient, whose pseudonym may be wrapped anew: a held row about a visit counts nowhere and yet leaves open what it would have told: totals of its canal are not known. */
const heldPieces = `select 'held', true, v.practice || '/' || v.session_id, h.table_name || ' ' || (h.raw - 'patient' - 'case_id')::text
  from held h join visits v on v.session_id = h.session_id and (h.practice is null or h.practice = v.practice) where h.state = 'held'`;
