import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { pool } from "../database";
import type { VisitHead } from "../visit/visit-head";
import type { NotedException } from "./exception-list";
import { workerOf } from "./whose-work";

/** An exception that was entered on a page and counts no longer. */
export type WithdrawnException = NotedException & {
  readonly withdrawnBy: string | null;
  readonly withdrawnAt: Date;
};

/** What was entered of one criterion at a visit and withdrawn since, the last withdrawn first; of a clinician's reach, of their own work. */
export async function withdrawnExceptions(
  reach: FiguresReach | OwnReach,
  head: VisitHead,
  criterion: string,
): Promise<WithdrawnException[]> {
  const own = "clinicianKey" in reach;
  if (!own && !reach.byClinician) throw new RangeError("this reach does not tell clinicians apart");
  const { rows } = await pool().query<WithdrawnException>(
    `select f.practice, v.session_id as "sessionId", e.canal, e.criterion, v.tooth, f.local_day::text as day,
       coalesce(c.clinician, f.clinician) as clinician, e.reason, 'page' as source, null as step, e.by, e.at, e.note,
       null as asked, e.withdrawn_by as "withdrawnBy", e.withdrawn_at as "withdrawnAt"
     from visit_facts f join sessions v on v.id = f.visit_id
     join entered_exceptions e on e.practice = f.practice and e.session_id = v.session_id
     left join canal_facts c on c.visit_id = f.visit_id and c.canal = e.canal
     where f.visit_id = $1 and e.criterion = $2 and e.withdrawn_at is not null
       and ($3::text[] is null or f.practice = any($3)) and ($4::text is null or ${workerOf("e.canal")} = $4)
     order by e.withdrawn_at desc, e.id desc`,
    [head.id, criterion, ...(own ? [null, reach.clinicianKey] : [reach.practices, null])],
  );
  return rows;
}
