import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { storedColumns } from "./stored-columns";

/** How long a visit without an end may have lasted, in minutes; common practice. */
const longestOpen = 180;

/**
 * Finds the visits of staged rows that name none: those at that time, within the row's tolerance, and of its practice,
 * chair and tooth as far as it names them. Where several fit, the only one that has the row's canal is meant; else all are
 * named in `candidates` (for people) and `candidate_visits` (by id) and the row is held. Rows that waited are looked up anew each time.
 */
export async function findVisits(client: pg.ClientBase, table: TableName): Promise<void> {
  const { rowCount } = await client.query(
    `update staged_${table} set session_id = null, practice = match ->> 'practice', candidates = null, candidate_visits = null where match is not null`,
  );
  if (!rowCount) return;
  const hasCanal = table !== "canals" && storedColumns(table).some(({ name }) => name === "canal");
  const inCanal = hasCanal
    ? "exists (select from canals c where c.visit_id = v.id and c.canal = s.canal)"
    : "false";
  await client.query(`
    with found as (
      select s.ctid as place, v.id as visit_id, v.practice, v.session_id, ${inCanal} as in_canal
      from staged_${table} s
      cross join lateral (select (s.match ->> 'at')::timestamptz as at,
        coalesce((s.match ->> 'until')::timestamptz, (s.match ->> 'at')::timestamptz) as until,
        make_interval(secs => 60 * (s.match ->> 'minutes')::float8) as beside) m
      join sessions v on v.started_at <= m.until + m.beside
        and v.started_at > m.at - m.beside - interval '1 day 1 second'
        and coalesce(v.ended_at, v.started_at + interval '${longestOpen} minutes') >= m.at - m.beside
        and (s.match ->> 'practice' is null or v.practice = s.match ->> 'practice')
        and (s.match ->> 'chair' is null or v.chair = s.match ->> 'chair')
        and (s.match ->> 'tooth' is null or v.tooth = s.match ->> 'tooth')
      where s.match is not null
    ), told as (
      select place, count(*) as visits, count(*) filter (where in_canal) as with_canal,
        min(practice) as practice, min(session_id) as session_id,
        min(practice) filter (where in_canal) as canal_practice, min(session_id) filter (where in_canal) as canal_session,
        string_agg(practice || ' ' || session_id, ', ' order by practice, session_id) as named,
        jsonb_agg(visit_id) as visits_named
      from found group by place
    )
    update staged_${table} s set
      practice = case when t.with_canal = 1 then t.canal_practice when t.visits = 1 then t.practice else s.practice end,
      session_id = case when t.with_canal = 1 then t.canal_session when t.visits = 1 then t.session_id end,
      candidates = case when t.with_canal <> 1 and t.visits > 1 then t.named end,
      candidate_visits = case when t.with_canal <> 1 and t.visits > 1 then t.visits_named end
    from told t where s.ctid = t.place`);
}
