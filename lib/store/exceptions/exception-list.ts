import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import type { VisitHead } from "../visit/visit-head";
import type { ExceptionKey } from "./exception-key";
import { workerOf } from "./whose-work";

/** A step that, written down as excepted, is an exception of a criterion; where and when the criterion was in force. */
export type ExceptedStep = {
  readonly criterion: string;
  readonly step: string;
  /** The one practice, or null and all but some. */
  readonly only: string | null;
  readonly allBut: readonly string[];
  /** First day and the day after the last; null where it has no such end. */
  readonly from: string | null;
  readonly until: string | null;
};

/** An exception, wherever it was written down. */
export type ListedException = ExceptionKey & {
  readonly tooth: string;
  /** Local day of the visit, YYYY-MM-DD. */
  readonly day: string;
  readonly clinician: string;
  readonly reason: string;
  /** The exceptions table of the records, a step that was excepted, or a page of this tool. */
  readonly source: "records" | "step" | "page";
  readonly step: string | null;
  /** Who entered it, and when: of the records a code, else a name. */
  readonly by: string | null;
  readonly at: Date | null;
  /** How the latest question about it stands; null where nothing was asked. */
  readonly asked: "asked" | "answered" | "closed" | null;
};

/** An exception with its free text, for the clinician and the lead alone: in no list, never exported. */
export type NotedException = ListedException & { readonly note: string | null };

export type ExceptionsAsked = {
  readonly period: Period;
  readonly criterion?: string | undefined;
  readonly reason?: string | undefined;
  /** Key of the clinician who did the work. */
  readonly worker?: string | undefined;
  readonly asked?: "asked" | "answered" | "closed" | "never" | undefined;
  readonly limit: number;
  readonly offset: number;
};

/** What exceptions of a period can be narrowed to, with how many there are. */
export type ExceptionChoice = {
  readonly practice: string;
  readonly criterion: string;
  readonly reason: string;
  readonly worker: string;
  readonly clinician: string;
  readonly exceptions: number;
};

/** A page of the exceptions within a reach, the latest visits first, and how many there are in all. */
export async function exceptionList(
  reach: FiguresReach | OwnReach,
  steps: readonly ExceptedStep[],
  { period, criterion, reason, worker, asked, limit, offset }: ExceptionsAsked,
): Promise<{ exceptions: ListedException[]; all: number }> {
  const { rows } = await pool().query<ListedException & { all: number }>(
    `${listed}, chosen as (
       select * from listed where ($7::text is null or criterion = $7) and ($8::text is null or reason = $8)
         and ($9::text is null or worker = $9) and ($10::text is null or coalesce(asked, 'never') = $10)
     )
     select ${shown}, (select count(*)::int from chosen) as all from chosen
     order by day desc, practice, "sessionId", criterion, canal, source limit $11 offset $12`,
    [
      ...scoped(reach, steps),
      period.from,
      period.until,
      null,
      criterion ?? null,
      reason ?? null,
      worker ?? null,
      asked ?? null,
      limit,
      offset,
    ],
  );
  return { exceptions: rows.map(({ all: _, ...row }) => row), all: rows[0]?.all ?? 0 };
}

/** What the exceptions of a period can be narrowed to. */
export async function exceptionChoices(
  reach: FiguresReach | OwnReach,
  steps: readonly ExceptedStep[],
  period: Period,
): Promise<ExceptionChoice[]> {
  const { rows } = await pool().query<ExceptionChoice>(
    `${listed} select practice, criterion, reason, worker, string_agg(distinct clinician, ', ') as clinician, count(*)::int as exceptions
     from listed group by practice, criterion, reason, worker order by 1, 2, 3, 5`,
    [...scoped(reach, steps), period.from, period.until, null],
  );
  return rows;
}

/** The exceptions of one criterion at a visit; of a clinician's reach, those of their own work. */
export async function exceptionsAt(
  reach: FiguresReach | OwnReach,
  steps: readonly ExceptedStep[],
  head: VisitHead,
  criterion: string,
): Promise<NotedException[]> {
  const { rows } = await pool().query<NotedException>(
    `${listed} select ${shown}, note from listed where criterion = $7 order by canal, source`,
    [...scoped(reach, steps), null, null, head.id, criterion],
  );
  return rows;
}

function scoped(reach: FiguresReach | OwnReach, steps: readonly ExceptedStep[]): unknown[] {
  const own = "clinicianKey" in reach;
  if (!own && !reach.byClinician) throw new RangeError("this reach does not tell clinicians apart");
  return own
    ? [null, reach.clinicianKey, JSON.stringify(steps)]
    : [reach.practices, null, JSON.stringify(steps)];
}

const shown = `practice, "sessionId", canal, criterion, tooth, day, clinician, reason, source, step, by, at, asked`;

/** What was entered on a page stands aside where the records bear the same key, as in the figures. */
const listed = `
with visits as (
  select f.visit_id, f.practice, f.local_day, f.worker, f.clinician, v.session_id, v.tooth
  from visit_facts f join sessions v on v.id = f.visit_id
  where ($1::text[] is null or f.practice = any($1)) and ($4::date is null or f.local_day >= $4) and ($5::date is null or f.local_day < $5)
    and ($6::bigint is null or f.visit_id = $6)
), steps_of as (
  select * from jsonb_to_recordset($3::jsonb) as m(criterion text, step text, "only" text, "allBut" text[], "from" date, "until" date)
), found as (
  select x.visit_id, x.canal, x.criterion, x.reason, 'records' as source, null as step, x.entered_by as by, x.entered_at as at, null as note
  from visits join exceptions x using (visit_id)
  union all
  select s.visit_id, s.canal, m.criterion, s.reason, 'step', s.step, null, s.at, null
  from visits f join steps s using (visit_id) join steps_of m on m.step = s.step
    and (m."only" = f.practice or (m."only" is null and f.practice <> all(m."allBut")))
    and (m."from" is null or f.local_day >= m."from") and (m."until" is null or f.local_day < m."until")
  where s.status = 'excepted' and s.reason is not null
  union all
  select f.visit_id, e.canal, e.criterion, e.reason, 'page', null, e.by, e.at, e.note
  from visits f join entered_exceptions e on e.practice = f.practice and e.session_id = f.session_id and e.withdrawn_at is null
  where not exists (select from exceptions x where x.visit_id = f.visit_id and x.canal = e.canal and x.criterion = e.criterion)
), listed as (
  select f.practice, f.session_id as "sessionId", n.canal, n.criterion, f.tooth, f.local_day::text as day, coalesce(c.clinician, f.clinician) as clinician,
    ${workerOf("n.canal")} as worker, n.reason, n.source, n.step, n.by, n.at, n.note,
    (select case when q.closed_at is not null then 'closed' when q.answered_at is not null then 'answered' else 'asked' end
     from exception_queries q where q.practice = f.practice and q.session_id = f.session_id and q.canal = n.canal and q.criterion = n.criterion
     order by q.id desc limit 1) as asked
  from found n join visits f using (visit_id) left join canal_facts c on c.visit_id = n.visit_id and c.canal = n.canal
  where $2::text is null or ${workerOf("n.canal")} = $2
)`;
