import type { NotesReach, OwnReach } from "@/lib/access/reach";
import type { AuditForm, Confirmation, ConfirmWindow, Dispute } from "@/lib/records/audit-work";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { isoSql } from "./audits";
import type { SignedVersion } from "./signed";

/** An audit that is shared with the clinicians whom it concerns: its window was opened, or it is signed. */
export type SharedAudit = Pick<AuditForm, "id" | "practice" | "period" | "criteria"> & {
  readonly window: ConfirmWindow | null;
  readonly signed: Omit<SignedVersion, "content"> | null;
  /** It is open to confirming: not signed, or being restated. */
  readonly open: boolean;
};

/** What a clinician said to an audit. */
export type OwnPart = {
  readonly confirmation: Confirmation | null;
  readonly disputes: readonly Dispute[];
  readonly answer: { readonly text: string; readonly at: string } | null;
};

/** Every audit that is shared, newest first; whether it concerns the clinician is told by `hasWork`. */
export async function sharedAudits(_reach: OwnReach): Promise<SharedAudit[]> {
  const { rows } = await pool().query<SharedAudit>(
    `select a.id, a.practice, a.period, a.criteria, s.version is null or a.restate_reason is not null as open,
       case when a.confirm_until is null then null else jsonb_build_object('until', a.confirm_until::text,
         'closedBy', a.confirm_closed_by, 'closedAt', ${isoSql("a.confirm_closed_at")}) end as "window",
       case when s.version is null then null else jsonb_build_object('version', s.version, 'reason', s.reason, 'sha256', s.sha256,
         'computedSha256', s.computed_sha256, 'by', s.by, 'at', ${isoSql("s.at")}) end as signed
     from audits a left join lateral (select * from signed_audits where audit_id = a.id order by version desc limit 1) s on true
     where a.set_aside_at is null and (a.confirm_until is not null or s.version is not null) order by a.id desc`,
  );
  return rows;
}

/** Has the clinician any work in the period, at the practice or, where that is null, anywhere. */
export async function hasWork(
  reach: OwnReach,
  practice: string | null,
  period: Period,
): Promise<boolean> {
  const { rowCount } = await pool().query(
    `select from visit_facts f where local_day >= $2::date and local_day < $3::date and ($4::text is null or practice = $4)
       and (worker = $1 or exists (select from canal_facts c where c.visit_id = f.visit_id and c.worker = $1)) limit 1`,
    [reach.clinicianKey, period.from, period.until, practice],
  );
  return rowCount === 1;
}

/** What the clinician said to the audit. */
export async function ownPart(reach: OwnReach, audit: number): Promise<OwnPart> {
  const key = reach.clinicianKey;
  const [confirmed, disputed, answered] = await Promise.all([
    pool().query<Confirmation>(
      `select clinician_key as "clinicianKey", by, ${isoSql("at")} as at from audit_confirmations where audit_id = $1 and clinician_key = $2`,
      [audit, key],
    ),
    pool().query<Dispute>(
      `select id, clinician_key as "clinicianKey", practice, session_id as "sessionId", kind, note, by, ${isoSql("at")} as at,
         answer, answered_by as "answeredBy", ${isoSql("answered_at")} as "answeredAt"
       from audit_disputes where audit_id = $1 and clinician_key = $2 and withdrawn_at is null order by id`,
      [audit, key],
    ),
    pool().query<{ text: string; at: string }>(
      `select text, ${isoSql("at")} as at from audit_answers where audit_id = $1 and clinician_key = $2 order by at desc limit 1`,
      [audit, key],
    ),
  ]);
  return {
    confirmation: confirmed.rows[0] ?? null,
    disputes: disputed.rows,
    answer: answered.rows[0] ?? null,
  };
}

/** Keeps the clinician's answer, which the lead reads; an empty one takes it away. */
export async function keepAnswer(
  reach: OwnReach,
  person: NotesReach,
  audit: number,
  text: string,
): Promise<void> {
  if (text === "") {
    await pool().query("delete from audit_answers where audit_id = $1 and user_id = $2", [
      audit,
      person.userId,
    ]);
    return;
  }
  await pool().query(
    `insert into audit_answers (audit_id, user_id, clinician_key, text, by) values ($1, $2, $3, $4, $5)
     on conflict (audit_id, user_id) do update set text = excluded.text, by = excluded.by, at = now()`,
    [audit, person.userId, reach.clinicianKey, text, person.by],
  );
}

/** Keeps that the clinician read what is shared with them. */
export async function keepRead(reach: OwnReach, person: NotesReach, audit: number): Promise<void> {
  await pool().query(
    `insert into audit_readers (audit_id, user_id, clinician_key) values ($1, $2, $3)
     on conflict (audit_id, user_id) do update set last_at = now()`,
    [audit, person.userId, reach.clinicianKey],
  );
}

/** The person's own reflection; nobody else's can be asked for. */
export async function reflectionOf(
  person: NotesReach,
  audit: number,
): Promise<{ readonly text: string; readonly at: string } | null> {
  const { rows } = await pool().query<{ text: string; at: string }>(
    `select text, ${isoSql("saved_at")} as at from reflections where audit_id = $1 and user_id = $2`,
    [audit, person.userId],
  );
  return rows[0] ?? null;
}

/** Keeps the person's own reflection; an empty one takes it away. */
export async function keepReflection(
  person: NotesReach,
  audit: number,
  text: string,
): Promise<void> {
  if (text === "") {
    await pool().query("delete from reflections where audit_id = $1 and user_id = $2", [
      audit,
      person.userId,
    ]);
    return;
  }
  await pool().query(
    `insert into reflections (audit_id, user_id, text) values ($1, $2, $3)
     on conflict (audit_id, user_id) do update set text = excluded.text, saved_at = now()`,
    [audit, person.userId, text],
  );
}
