import type pg from "pg";
import type { TableName } from "@/lib/records/tables";

/**
 * The visits that rows name, by the number and practice that they name them by, in the temporary table `named_visits`: how many there are
 * of that name, and of one alone its practice, of several all of them. Visits come before all that hangs on them, so that each is looked
 * up once however many tables name it.
 */
export async function makeNamed(client: pg.ClientBase): Promise<void> {
  await client.query(
    `create temp table named_visits (session_id text, practice text, visit_id bigint, visits int, of_practice text, in_practices text) on commit drop`,
  );
}

/** Looks up the visits that the staged rows of a table name and no table before did; those that are not there may come later. */
export async function findNamed(client: pg.ClientBase, table: TableName): Promise<void> {
  const { rowCount } = await client.query(`
    insert into named_visits
    select a.session_id, a.practice, min(v.id), count(*), min(v.practice),
      case when count(*) = 1 then min(v.practice)
        else (select string_agg(w.practice, ' and ' order by w.practice) from sessions w where w.session_id = a.session_id) end
    from (
      select distinct s.session_id, coalesce(s.practice, '') as practice from staged_${table} s
      where not exists (select from named_visits f where f.session_id = s.session_id and f.practice = coalesce(s.practice, ''))
    ) a join sessions v on v.session_id = a.session_id and (a.practice = '' or v.practice = a.practice)
    group by a.session_id, a.practice`);
  if (rowCount) await client.query("analyze named_visits");
}

/** SQL: the visit that row `s` names, as `f`. */
export const joinNamed =
  "left join named_visits f on f.session_id = s.session_id and f.practice = coalesce(s.practice, '')";
