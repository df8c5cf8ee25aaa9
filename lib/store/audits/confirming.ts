import type pg from "pg";
import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Dispute } from "@/lib/records/audit-work";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { inOnePiece } from "../exceptions/in-one-piece";
import { auditWithin, inOpenAudit, isoSql } from "./audits";

/** The audit whose window is open, and its days; a clinician writes into no other. */
export type OpenWindow = {
  readonly id: number;
  readonly practice: string | null;
  readonly period: Period;
};

/** Confirms the clinician's records, or takes that back. False where the window is not open. */
export async function confirmRecords(
  reach: OwnReach,
  audit: OpenWindow,
  confirmed: boolean,
): Promise<boolean> {
  return inOpenWindow(audit, async (client) => {
    await client.query(
      "delete from audit_confirmations where audit_id = $1 and clinician_key = $2",
      [audit.id, reach.clinicianKey],
    );
    if (confirmed)
      await client.query(
        "insert into audit_confirmations (audit_id, clinician_key, by) values ($1, $2, $3)",
        [audit.id, reach.clinicianKey, reach.by],
      );
    return true;
  });
}

/** Disputes a visit among the clinician's own of the audit. False where it is none of them, or the window not open. */
export async function disputeVisit(
  reach: OwnReach,
  audit: OpenWindow,
  dispute: Pick<Dispute, "practice" | "sessionId" | "kind" | "note">,
): Promise<boolean> {
  return inOpenWindow(audit, async (client) => {
    const { rowCount } = await client.query(
      `insert into audit_disputes (audit_id, clinician_key, practice, session_id, kind, note, by)
       select $1, $2, v.practice, v.session_id, $5, $6, $7 from sessions v join visit_facts f on f.visit_id = v.id
       where v.practice = $3 and v.session_id = $4 and ($8::text is null or v.practice = $8) and v.local_day >= $9::date and v.local_day < $10::date
         and (f.worker = $2 or exists (select from canal_facts c where c.visit_id = v.id and c.worker = $2))`,
      [
        audit.id,
        reach.clinicianKey,
        dispute.practice,
        dispute.sessionId,
        dispute.kind,
        dispute.note,
        reach.by,
        audit.practice,
        audit.period.from,
        audit.period.until,
      ],
    );
    return rowCount === 1;
  });
}

/** Takes one's own dispute back; it is kept as withdrawn. */
export async function withdrawDispute(
  reach: OwnReach,
  audit: OpenWindow,
  id: number,
): Promise<boolean> {
  return inOpenWindow(audit, async (client) => {
    const { rowCount } = await client.query(
      "update audit_disputes set withdrawn_at = now() where audit_id = $1 and id = $2 and clinician_key = $3 and withdrawn_at is null",
      [audit.id, id, reach.clinicianKey],
    );
    return rowCount === 1;
  });
}

/** The lead answers a dispute. False where there is none, or the audit is not open. */
export async function answerDispute(
  reach: FiguresReach,
  audit: number,
  id: number,
  answer: string,
): Promise<boolean> {
  let answered = false;
  await inOpenAudit(reach, audit, async (client) => {
    const { rowCount } = await client.query(
      "update audit_disputes set answer = $3, answered_by = $4, answered_at = now() where audit_id = $1 and id = $2 and withdrawn_at is null",
      [audit, id, answer, reach.by],
    );
    answered = rowCount === 1;
  });
  return answered;
}

/** Who read their page of the audit, and what they answered, by clinician; never what they noted for themselves. */
export async function responsesTo(
  reach: FiguresReach,
  audit: number,
): Promise<
  readonly {
    readonly clinicianKey: string;
    readonly readAt: string;
    readonly answer: string | null;
  }[]
> {
  if (!(await auditWithin(reach, audit))) return [];
  const { rows } = await pool().query<{
    clinicianKey: string;
    readAt: string;
    answer: string | null;
  }>(
    `select r.clinician_key as "clinicianKey", ${isoSql("r.last_at")} as "readAt", a.text as answer
     from audit_readers r left join audit_answers a using (audit_id, user_id) where r.audit_id = $1 order by r.clinician_key collate "C"`,
    [audit],
  );
  return rows;
}

/** Whoever writes into the same audit waits: a window closes before or after, never meanwhile. */
async function inOpenWindow(
  { id }: OpenWindow,
  work: (client: pg.ClientBase) => Promise<boolean>,
): Promise<boolean> {
  return inOnePiece(async (client) => {
    const { rowCount } = await client.query(
      `select from audits a where id = $1 and set_aside_at is null and confirm_until >= current_date and confirm_closed_at is null
         and (restate_reason is not null or not exists (select from signed_audits where audit_id = a.id)) for update`,
      [id],
    );
    return rowCount === 1 && (await work(client));
  });
}
