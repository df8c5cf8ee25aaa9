import type pg from "pg";
import type { FiguresReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { AuditForm, ConfirmWindow } from "@/lib/records/audit-work";
import { pool } from "../database";
import { inOnePiece } from "../exceptions/in-one-piece";

/** An audit with how far it is. */
export type AuditRow = AuditForm & {
  readonly window: ConfirmWindow | null;
  /** Set while a signed audit is open again for a restated version. */
  readonly restate: { readonly reason: string; readonly by: string } | null;
  readonly setAsideBy: string | null;
  /** Signed versions. */
  readonly versions: number;
  readonly signedAt: string | null;
  readonly signedBy: string | null;
};

/** SQL: a moment as ISO 8601 in UTC, to the millisecond. */
export function isoSql(column: string): string {
  return `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
}

const rowSql = `select a.id, a.practice, a.period, a.criteria, a.previous_id as previous, a.by, ${isoSql("a.at")} as at,
  case when a.confirm_until is null then null else jsonb_build_object('until', a.confirm_until::text,
    'closedBy', a.confirm_closed_by, 'closedAt', ${isoSql("a.confirm_closed_at")}) end as "window",
  case when a.restate_reason is null then null else jsonb_build_object('reason', a.restate_reason, 'by', a.restate_by) end as restate,
  a.set_aside_by as "setAsideBy", coalesce(s.version, 0) as versions, ${isoSql("s.at")} as "signedAt", s.by as "signedBy"
  from audits a left join lateral (select version, at, by from signed_audits where audit_id = a.id order by version desc limit 1) s on true`;

/** The audits that lie wholly within the reach, newest first; that of the whole group only for those who see all of it. */
export async function auditsWithin(reach: FiguresReach): Promise<AuditRow[]> {
  requireLead(reach);
  const { rows } = await pool().query<AuditRow>(
    `${rowSql} where $1::text[] is null or a.practice = any($1) order by a.id desc`,
    [reach.practices],
  );
  return rows;
}

/** One audit; null where there is none within the reach. */
export async function auditWithin(reach: FiguresReach, id: number): Promise<AuditRow | null> {
  requireLead(reach);
  const { rows } = await pool().query<AuditRow>(
    `${rowSql} where a.id = $2 and ($1::text[] is null or a.practice = any($1))`,
    [reach.practices, id],
  );
  return rows[0] ?? null;
}

/** Begins an audit; `by` is whoever, or whatever, began it. @throws Refused where the practice, or the group, is not within the reach */
export async function beginAudit(
  reach: FiguresReach,
  form: Pick<AuditForm, "practice" | "period" | "criteria" | "previous" | "by">,
): Promise<number> {
  requireLead(reach);
  requireCovers(reach, form.practice);
  const { rows } = await pool().query<{ id: number }>(
    "insert into audits (practice, period, criteria, previous_id, by) values ($1, $2, $3, $4, $5) returning id",
    [form.practice, form.period, form.criteria, form.previous, form.by],
  );
  return rows[0]?.id ?? 0;
}

/** Changes of the audit itself, where it is open to writing. False where it is not, or not there. */
export async function changeAudit(
  reach: FiguresReach,
  id: number,
  change: {
    readonly criteria?: readonly string[];
    readonly confirmUntil?: string | null;
    readonly close?: boolean;
    /** The audit that it turns out to repeat. */
    readonly previous?: number;
  },
): Promise<boolean> {
  return inOpenAudit(reach, id, async (client) => {
    if (change.criteria)
      await client.query("update audits set criteria = $2 where id = $1", [id, change.criteria]);
    if (change.previous)
      await client.query("update audits set previous_id = $2 where id = $1", [id, change.previous]);
    if (change.confirmUntil !== undefined)
      await client.query(
        "update audits set confirm_until = $2, confirm_closed_by = null, confirm_closed_at = null where id = $1",
        [id, change.confirmUntil],
      );
    if (change.close)
      await client.query(
        "update audits set confirm_closed_by = $2, confirm_closed_at = now() where id = $1 and confirm_closed_at is null",
        [id, reach.by],
      );
  });
}

/** Opens a signed audit for a restated version, or, without a reason, leaves it as signed. False where that is not possible. */
export async function setRestating(
  reach: FiguresReach,
  id: number,
  reason: string | null,
): Promise<boolean> {
  requireLead(reach);
  const { rowCount } = await pool().query(
    `update audits a set restate_reason = $3, restate_by = case when $3::text is null then null else $4 end
     where id = $2 and ($1::text[] is null or practice = any($1)) and set_aside_at is null
       and exists (select from signed_audits where audit_id = a.id) and (restate_reason is null) <> ($3::text is null)`,
    [reach.practices, id, reason, reach.by],
  );
  return rowCount === 1;
}

/** Sets an audit that was never signed aside, or takes it up again. False where that is not possible. */
export async function setAside(reach: FiguresReach, id: number, aside: boolean): Promise<boolean> {
  requireLead(reach);
  const { rowCount } = await pool().query(
    `update audits a set set_aside_by = case when $3 then $4 end, set_aside_at = case when $3 then now() end
     where id = $2 and ($1::text[] is null or practice = any($1)) and (set_aside_at is null) = $3
       and not exists (select from signed_audits where audit_id = a.id)`,
    [reach.practices, id, aside, reach.by],
  );
  return rowCount === 1;
}

/**
 * Runs the work where the audit is within the reach and open to writing: neither signed (and not being restated) nor set
 * aside. Whoever writes into the same audit waits. False where it is not open, or not there.
 */
export async function inOpenAudit(
  reach: FiguresReach,
  id: number,
  work: (client: pg.ClientBase) => Promise<void>,
): Promise<boolean> {
  requireLead(reach);
  return inOnePiece(async (client) => {
    const { rowCount } = await client.query(
      `select from audits a where id = $2 and ($1::text[] is null or practice = any($1)) and set_aside_at is null
         and (restate_reason is not null or not exists (select from signed_audits where audit_id = a.id)) for update`,
      [reach.practices, id],
    );
    if (rowCount !== 1) return false;
    await work(client);
    return true;
  });
}

function requireLead(reach: FiguresReach): void {
  if (!reach.byClinician) throw new Refused("Audits are run by the clinical lead.");
}

function requireCovers(reach: FiguresReach, practice: string | null): void {
  if (reach.practices === null) return;
  if (practice === null)
    throw new Refused("An audit of the whole group is for a clinical lead of the group.");
  if (!reach.practices.includes(practice))
    throw new Refused(`Practice ${practice} is not yours to audit.`);
}
