import type { FiguresReach, NotesReach } from "@/lib/access/reach";
import type { ActionState, AuditAction } from "@/lib/records/audit-work";
import { pool } from "../database";
import { auditWithin, inOpenAudit } from "./audits";
import { actionsSql } from "./work";

export type NewAction = Pick<
  AuditAction,
  "measure" | "what" | "why" | "owner" | "ownerId" | "due" | "know"
>;

/** Agrees an action, or changes what was agreed. False where the audit is not open, or the action not of it. */
export async function agreeAction(
  reach: FiguresReach,
  audit: number,
  action: NewAction,
  id?: number,
): Promise<boolean> {
  let kept = false;
  await inOpenAudit(reach, audit, async (client) => {
    const { measure, what, why, owner, ownerId, due, know } = action;
    const values = [audit, measure, what, why, owner, ownerId, due, know];
    const { rowCount } = id
      ? await client.query(
          `update audit_actions set measure = $2, what = $3, why = $4, owner = $5, owner_id = $6, due = $7, know = $8
           where audit_id = $1 and id = $9`,
          [...values, id],
        )
      : await client.query(
          `insert into audit_actions (audit_id, measure, what, why, owner, owner_id, due, know, by) values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
          [...values, reach.by],
        );
    kept = rowCount === 1;
  });
  return kept;
}

/** Tells what became of an action, signed or not. False where it is not within the reach. */
export async function tellAction(
  reach: FiguresReach,
  id: number,
  news: { readonly state: ActionState; readonly text: string },
): Promise<boolean> {
  const { rows } = await pool().query<{ audit: number }>(
    "select audit_id as audit from audit_actions where id = $1",
    [id],
  );
  if (!rows[0] || !(await auditWithin(reach, rows[0].audit))) return false;
  await tell(id, news, reach.by);
  return true;
}

/** The owner tells what became of their own action. False where it is not theirs. */
export async function tellOwnAction(
  owner: NotesReach,
  id: number,
  news: { readonly state: ActionState; readonly text: string },
): Promise<boolean> {
  const { rowCount } = await pool().query(
    "select from audit_actions where id = $1 and owner_id = $2",
    [id, owner.userId],
  );
  if (rowCount !== 1) return false;
  await tell(id, news, owner.by);
  return true;
}

/** The actions of all audits within the reach, oldest first. */
export async function actionsWithin(reach: FiguresReach): Promise<AuditAction[]> {
  const { rows } = await pool().query<AuditAction>(
    actionsSql(
      "a.audit_id in (select id from audits where set_aside_at is null and ($1::text[] is null or practice = any($1)))",
    ),
    [reach.practices],
  );
  return rows;
}

/** The actions that a person owns, of audits that are not set aside. */
export async function actionsOf(owner: NotesReach): Promise<AuditAction[]> {
  const { rows } = await pool().query<AuditAction>(
    actionsSql(
      "a.owner_id = $1 and a.audit_id in (select id from audits where set_aside_at is null)",
    ),
    [owner.userId],
  );
  return rows;
}

/** Who may own an action: everybody who signs in and holds a role there or in the group. */
export async function possibleOwners(
  reach: FiguresReach,
  practice: string | null,
): Promise<{ id: string; name: string }[]> {
  const { rows } = await pool().query<{ id: string; name: string }>(
    `select u.id, u.name from users u where exists (select from grants g where g.user_id = u.id
       and (g.practice is null or $2::text is null or g.practice = $2) and ($1::text[] is null or g.practice is null or g.practice = any($1)))
     order by u.name, u.id`,
    [reach.practices, practice],
  );
  return rows;
}

async function tell(
  id: number,
  { state, text }: { readonly state: ActionState; readonly text: string },
  by: string,
): Promise<void> {
  await pool().query(
    "insert into audit_action_news (action_id, state, text, by) values ($1, $2, $3, $4)",
    [id, state, text, by],
  );
}
