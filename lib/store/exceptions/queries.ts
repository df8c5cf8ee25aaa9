import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool, prisma } from "../database";
import type { ExceptionKey } from "./exception-key";
import { inOnePiece } from "./in-one-piece";
import { requireOwn, workerOf } from "./whose-work";

/** What a lead asks about an exception, and what came back. Figures do not depend on it. */
export type Query = {
  readonly question: string;
  readonly by: string;
  readonly at: Date;
  readonly answer: string | null;
  readonly answeredBy: string | null;
  readonly answeredAt: Date | null;
  readonly closedBy: string | null;
  readonly closedAt: Date | null;
};

/** An open query and the visit it is about. */
export type OpenQuery = Query &
  ExceptionKey & {
    readonly tooth: string;
    /** Local day of the visit, YYYY-MM-DD. */
    readonly day: string;
    readonly clinician: string;
  };

/** Asks about an exception; one question is open at a time, and false says that one is. @throws Refused */
export async function askAbout(
  reach: FiguresReach,
  key: ExceptionKey,
  question: string,
): Promise<boolean> {
  requireMayAsk(reach, key);
  return inOnePiece(async (client) => {
    // Two who ask at once wait for each other at the visit's row.
    await client.query(
      "select from sessions where practice = $1 and session_id = $2 for no key update",
      [key.practice, key.sessionId],
    );
    const { rowCount } = await client.query(
      `insert into exception_queries (practice, session_id, canal, criterion, question, by)
       select $1, $2, $3, $4, $5, $6 where not exists (select from exception_queries
         where practice = $1 and session_id = $2 and canal = $3 and criterion = $4 and closed_at is null)`,
      [key.practice, key.sessionId, key.canal, key.criterion, question, reach.by],
    );
    return rowCount === 1;
  });
}

/** Answers the open question about one's own work. False where none waits for an answer. @throws Refused */
export async function answerQuery(
  reach: OwnReach,
  key: ExceptionKey,
  answer: string,
): Promise<boolean> {
  return inOnePiece(async (client) => {
    await requireOwn(client, reach, key);
    const { rowCount } = await client.query(
      `update exception_queries set answer = $5, answered_by = $6, answered_at = now()
       where practice = $1 and session_id = $2 and canal = $3 and criterion = $4 and closed_at is null and answered_at is null`,
      [key.practice, key.sessionId, key.canal, key.criterion, answer, reach.by],
    );
    return (rowCount ?? 0) > 0;
  });
}

/** Closes the open question, answered or not. False where none is open. @throws Refused */
export async function closeQuery(reach: FiguresReach, key: ExceptionKey): Promise<boolean> {
  requireMayAsk(reach, key);
  const { count } = await prisma().exceptionQuery.updateMany({
    where: { ...keyOf(key), closedAt: null },
    data: { closedAt: new Date(), closedBy: reach.by },
  });
  return count > 0;
}

/** Everything that was asked about an exception, the latest first. Only a visit that was within reach leads here. */
export async function queriesOf(key: ExceptionKey): Promise<Query[]> {
  return prisma().exceptionQuery.findMany({ where: keyOf(key), orderBy: { id: "desc" } });
}

/** The open questions within a reach, whatever the period: those nobody answered first, then the oldest. */
export async function openQueries(reach: FiguresReach | OwnReach): Promise<OpenQuery[]> {
  const own = "clinicianKey" in reach;
  if (!own && !reach.byClinician) throw new RangeError("this reach does not tell clinicians apart");
  const { rows } = await pool().query<OpenQuery>(
    `select q.practice, q.session_id as "sessionId", q.canal, q.criterion, q.question, q.by, q.at, q.answer, q.answered_by as "answeredBy",
       q.answered_at as "answeredAt", q.closed_by as "closedBy", q.closed_at as "closedAt", v.tooth, v.local_day::text as day,
       coalesce(c.clinician, f.clinician) as clinician
     from exception_queries q join sessions v on v.practice = q.practice and v.session_id = q.session_id
     join visit_facts f on f.visit_id = v.id left join canal_facts c on c.visit_id = v.id and c.canal = q.canal
     where q.closed_at is null and ($1::text[] is null or q.practice = any($1)) and ($2::text is null or ${workerOf("q.canal")} = $2)
     order by q.answered_at is not null, q.at, q.id limit 200`,
    own ? [null, reach.clinicianKey] : [reach.practices, null],
  );
  return rows;
}

function requireMayAsk(reach: FiguresReach, { practice }: ExceptionKey): void {
  if (!reach.byClinician) throw new Refused("Only a clinical lead may ask about an exception.");
  if (reach.practices !== null && !reach.practices.includes(practice))
    throw new Refused(`Practice ${practice} is not yours to see.`);
}

function keyOf({ practice, sessionId, canal, criterion }: ExceptionKey): ExceptionKey {
  return { practice, sessionId, canal, criterion };
}
