import type pg from "pg";
import type { FiguresReach } from "@/lib/access/reach";
import type {
  AuditAction,
  AuditTextRow,
  AuditWork,
  Confirmation,
  ConfirmWindow,
  Dispute,
  LookEnd,
} from "@/lib/records/audit-work";
import { pool } from "../database";
import { auditWithin, isoSql } from "./audits";

/** All that was written into an audit; null where it is not within the reach. */
export async function workOf(reach: FiguresReach, audit: number): Promise<AuditWork | null> {
  if (!(await auditWithin(reach, audit))) return null;
  return writtenIn(pool(), audit);
}

/** The same as a transaction sees it; whoever calls has seen to it that the audit may be read. */
export async function writtenIn(
  client: pg.ClientBase | pg.Pool,
  audit: number,
): Promise<AuditWork> {
  const list = async <Row extends pg.QueryResultRow>(sql: string) =>
    (await client.query<Row>(sql, [audit])).rows;
  const texts = await list<AuditTextRow>(
    `select distinct on (key collate "C") key, revision, text, by, ${isoSql("at")} as at from audit_texts where audit_id = $1 order by key collate "C", revision desc`,
  );
  const [window] = await list<ConfirmWindow>(
    `select confirm_until::text as until, confirm_closed_by as "closedBy", ${isoSql("confirm_closed_at")} as "closedAt"
     from audits where id = $1 and confirm_until is not null`,
  );
  return {
    texts: texts.filter(({ text }) => text.trim() !== ""),
    window: window ?? null,
    confirmations: await list<Confirmation>(
      `select clinician_key as "clinicianKey", by, ${isoSql("at")} as at from audit_confirmations where audit_id = $1 order by clinician_key collate "C"`,
    ),
    disputes: await list<Dispute>(
      `select id, clinician_key as "clinicianKey", practice, session_id as "sessionId", kind, note, by, ${isoSql("at")} as at,
         answer, answered_by as "answeredBy", ${isoSql("answered_at")} as "answeredAt"
       from audit_disputes where audit_id = $1 and withdrawn_at is null order by id`,
    ),
    looks: await list<LookEnd>(
      `select flag, step, by, ${isoSql("at")} as at from audit_looks where audit_id = $1 order by flag collate "C"`,
    ),
    actions: await list<AuditAction>(actionsSql("a.audit_id = $1")),
    earlier: await list<AuditAction>(actionsSql(`a.audit_id in (${earlierAudits})`)),
  };
}

/** SQL: actions with what became of each, oldest first. */
export function actionsSql(where: string): string {
  return `select a.id, a.audit_id as audit, a.measure, a.what, a.why, a.owner, a.owner_id as "ownerId", a.due::text as due, a.know, a.by, ${isoSql("a.at")} as at,
    coalesce((select jsonb_agg(jsonb_build_object('state', n.state, 'text', n.text, 'by', n.by, 'at', ${isoSql("n.at")}) order by n.id)
      from audit_action_news n where n.action_id = a.id), '[]') as news
    from audit_actions a where ${where} order by a.id`;
}

/** The audits that this one repeats, one after the other. */
const earlierAudits = `with recursive before (id) as (
  select previous_id from audits where id = $1 and previous_id is not null
  union select p.previous_id from audits p join before b on p.id = b.id where p.previous_id is not null
) select id from before`;
