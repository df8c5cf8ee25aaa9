import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { practicesOf } from "./practices-of";

/** Whom a clinician is compared with: the others of their practice, or the group's others of the same peer group. */
export type ComparedWith = "practice" | "peers";

/** A clinician whose others are asked for: their key, and the place of the period in the list of periods. */
export type Target = { readonly worker: string; readonly period: number };

/** The work of `other` at `practice` in the period stands beside that of `worker`. Never leaves lib/store. */
export type Pair = Target & { readonly practice: string; readonly other: string };

/** Who stands beside whom. A reach of one's own asks for oneself alone; others need one that tells clinicians apart. */
export async function comparedWith(
  reach: FiguresReach | OwnReach,
  periods: readonly Period[],
  targets: readonly Target[],
  comparison: ComparedWith,
): Promise<Pair[]> {
  const own = "clinicianKey" in reach;
  const allowed = targets.filter((target) =>
    own ? target.worker === reach.clinicianKey : reach.byClinician,
  );
  if (allowed.length === 0) return [];
  // Beside somebody of one's own practice stands nobody of another.
  const where = own && comparison === "practice" ? await practicesOf(reach) : null;
  const { rows } = await pool().query<Pair>(
    `with periods as (
      select * from unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until)
    ), targets as (
      select * from unnest($5::text[], $6::int[]) as t(worker, period)
    ), seen as (
      -- Who worked where in a period, by canals or by visits.
      ${["canal_facts", "visit_facts"].map(seenIn).join("\n      union ")}
    )
    select distinct t.worker, t.period, o.practice, o.worker as other
    from targets t join seen s on s.period = t.period and s.worker = t.worker and ($4::text[] is null or s.practice = any($4))
    join seen o on o.period = t.period and o.worker <> t.worker
    join periods p on p.period = t.period
    where ${comparison === "practice" ? "o.practice = s.practice" : `${peers("t.worker")} is not distinct from ${peers("o.worker")}`}`,
    [
      periods.map((_, place) => place),
      periods.map((period) => period.from),
      periods.map((period) => period.until),
      own ? null : reach.practices,
      allowed.map((target) => target.worker),
      allowed.map((target) => target.period),
      where,
    ],
  );
  return rows;
}

function seenIn(facts: string): string {
  return `select p.period, f.practice, f.worker from periods p join ${facts} f on f.local_day >= p.since and f.local_day < p.until
        and ($7::text[] is null or f.practice = any($7))`;
}

/** SQL: a person's peers in a period, as last written down before its end; none for a code that is no known person's. */
function peers(worker: string): string {
  return `(select peers from people where 'person:' || person = ${worker} and "from" < p.until and peers is not null
    order by "from" desc limit 1)`;
}
