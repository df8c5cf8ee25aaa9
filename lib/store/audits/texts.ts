import type { FiguresReach } from "@/lib/access/reach";
import type { AuditTextRow } from "@/lib/records/audit-work";
import { pool } from "../database";
import { auditWithin, inOpenAudit, isoSql } from "./audits";

/** What keeping a text came to: the text now in force, which may hold what somebody else typed meanwhile. */
export type KeptText = { readonly text: string; readonly revision: number };

/**
 * Keeps a text as it was typed. Where somebody else kept theirs since `begun`, both are merged; no revision is ever written over.
 * Null where the audit is not open to writing.
 *
 * @param begun the revision that the typing began from; 0 where there was none
 */
export async function keepText(
  reach: FiguresReach,
  audit: number,
  key: string,
  typed: { readonly begun: number; readonly text: string },
  merged: (base: string, theirs: string, mine: string) => string,
): Promise<KeptText | null> {
  let kept: KeptText | null = null;
  await inOpenAudit(reach, audit, async (client) => {
    const { rows } = await client.query<{ revision: number; text: string }>(
      "select revision, text from audit_texts where audit_id = $1 and key = $2 and (revision = $3 or revision = (select max(revision) from audit_texts where audit_id = $1 and key = $2)) order by revision",
      [audit, key, typed.begun],
    );
    const now = rows.at(-1) ?? { revision: 0, text: "" };
    const base = rows.find(({ revision }) => revision === typed.begun)?.text ?? "";
    const text = now.revision === typed.begun ? typed.text : merged(base, now.text, typed.text);
    if (text === now.text) {
      kept = now;
      return;
    }
    kept = { text, revision: now.revision + 1 };
    await client.query(
      "insert into audit_texts (audit_id, key, revision, text, by) values ($1, $2, $3, $4, $5)",
      [audit, key, kept.revision, text, reach.by],
    );
  });
  return kept;
}

/** Every revision of a text, newest first; none where the audit is not within the reach. */
export async function revisionsOf(
  reach: FiguresReach,
  audit: number,
  key: string,
): Promise<AuditTextRow[]> {
  if (!(await auditWithin(reach, audit))) return [];
  const { rows } = await pool().query<AuditTextRow>(
    `select key, revision, text, by, ${isoSql("at")} as at from audit_texts where audit_id = $1 and key = $2 order by revision desc`,
    [audit, key],
  );
  return rows;
}
