import { type TableName, tables } from "@/lib/records/tables";
import { joinNamed } from "./named-visits";
import { contradictionReasons, differs, waitingReasons } from "./relation-reasons";
import { hangsOnVisit, list, storedColumns, storedKey } from "./stored-columns";

/**
 * What becomes of the staged rows of one table:
 *
 * - `new`: accepted as it stands;
 * - `later`: the same key as a `new` row of this import, or completes an accepted one: settled in rounds;
 * - `repeated`: an accepted row bears everything it says;
 * - `contradiction`, `waiting` (parent not known), `several-practices`, `several-visits` (a row that names no visit fits
 *   more than one), `outside-reach`: held.
 *
 * The order of arrival decides what stands: file_id rises in the order of reading, then the line.
 */
export function judgingQuery(table: TableName, of: Staged): string {
  return hangsOnVisit(table) ? childQuery(table, of) : ownQuery(table, of);
}

/** Which staged rows are judged. */
export type Staged = {
  /** A relation of them: a table's name, or a query in brackets. */
  readonly rows: string;
  /** No two of them have the same key, so that each is the first to arrive with it. */
  readonly alone?: boolean;
  /** Practices whose rows may be brought in; null is all. */
  readonly practices: readonly string[] | null;
};

function ownQuery(table: TableName, { rows, alone, practices }: Staged): string {
  const key = storedKey(table);
  return `
    select s.*, null::bigint as visit_id, null::text as in_practices, e.id as row_id,
      case when ${outside("s.practice", practices)} then 'outside-reach'
           ${compared(table, alone ? "1" : arrival(list(key, "s.")))}
      end as verdict
    from ${rows} s
    left join "${table}" e on ${same(key)}`;
}

function childQuery(table: TableName, { rows, alone, practices }: Staged): string {
  const key = storedKey(table).filter((name) => name !== "visit_id");
  const parent = parentOf(table);
  return `
    select s.*, f.visit_id, f.in_practices, e.id as row_id,
      case when s.candidates is not null then 'several-visits'
           when f.visits > 1 then 'several-practices'
           when f.visit_id is null then 'waiting'
           when ${outside("f.of_practice", practices)} then 'outside-reach'
           when ${parent.missing} then 'waiting'
           ${compared(table, alone ? "1" : arrival(`f.visit_id, ${list(key, "s.")}`))}
      end as verdict
    from ${rows} s
    ${joinNamed}
    ${parent.join}
    left join "${table}" e on e.visit_id = f.visit_id and ${same(key)}`;
}

/** The parent beyond the visit: a canal, or of a follow-up the instrument's use. */
function parentOf(table: TableName): { join: string; missing: string } {
  if (tables[table].parent === "instruments") {
    return {
      join: `left join instruments p on p.visit_id = f.visit_id and p.canal = s.canal and p.seq = s.seq`,
      missing: "p.id is null",
    };
  }
  if (!storedColumns(table).some((column) => column.name === "canal") || table === "canals") {
    return { join: "", missing: "false" };
  }
  return {
    join: "left join canals p on p.visit_id = f.visit_id and p.canal = s.canal",
    missing: "(s.canal <> '' and p.id is null)",
  };
}

function arrival(key: string): string {
  return `row_number() over (partition by ${key} order by s.file_id, s.line)`;
}

function compared(table: TableName, place: string): string {
  return `
    when e.id is null and ${place} = 1 then 'new'
    when e.id is null then 'later'
    when ${contradicts(table)} then 'contradiction'
    when ${completes(table)} then 'later'
    else 'repeated'`;
}

/** SQL: row `s` says something else than the accepted row `e`. */
export function contradicts(table: TableName): string {
  return any(valueColumns(table).map((name) => differs(name)));
}

/** SQL: row `s` has a value where `e` has none. */
export function completes(table: TableName): string {
  return any(
    valueColumns(table).map((name) => `(e."${name}" is null and s."${name}" is not null)`),
  );
}

/** The columns that carry values, not the key. */
export function valueColumns(table: TableName): string[] {
  return storedColumns(table)
    .filter((column) => !column.key)
    .map((column) => column.name);
}

/** SQL that gives the held reasons of a judged row `j` of import file `i`, by its verdict. */
export function reasonsByVerdict(table: TableName): string {
  const others = contradictionReasons(table, valueColumns(table));
  return hangsOnVisit(table)
    ? `case j.verdict when 'waiting' then ${waitingReasons(table)} else ${others} end`
    : others;
}

function outside(practice: string, practices: readonly string[] | null): string {
  if (practices === null) return "false";
  const quoted = practices.map((code) => `'${code.replaceAll("'", "''")}'`);
  return `(${mine} and not (${practice} = any(array[${quoted.join(", ")}]::text[])))`;
}

/** SQL: the row `s` is brought or mended now; others that join by themselves were somebody else's to bring. */
const mine = "(s.held_id is null or s.held_id in (select held_id from mending))";

function same(key: readonly string[]): string {
  return key.map((name) => `e."${name}" = s."${name}"`).join(" and ");
}

function any(conditions: readonly string[]): string {
  return conditions.length === 0 ? "false" : `(${conditions.join(" or ")})`;
}
