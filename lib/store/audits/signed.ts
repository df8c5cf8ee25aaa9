import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { AuditWork } from "@/lib/records/audit-work";
import { pool } from "../database";
import { revision } from "../facts/revision";
import { auditWithin, inOpenAudit, isoSql } from "./audits";
import { writtenIn } from "./work";

/** A signed version as it is kept. */
export type SignedVersion = {
  readonly version: number;
  /** Of a restated version. */
  readonly reason: string | null;
  /** Canonical JSON. */
  readonly content: string;
  readonly sha256: string;
  readonly computedSha256: string;
  readonly by: string;
  readonly at: string;
};

/** Every signed version, the first first; none where the audit is not within the reach. */
export async function signedVersions(reach: FiguresReach, audit: number): Promise<SignedVersion[]> {
  if (!(await auditWithin(reach, audit))) return [];
  return versionsOf(audit);
}

/** The latest signed version of an audit that is shared; a clinician is shown their own part of it. */
export async function sharedVersion(
  _reach: OwnReach,
  audit: number,
): Promise<SignedVersion | null> {
  return (await versionsOf(audit)).at(-1) ?? null;
}

/** Why nothing was signed. */
export type NotSigned = "not-open" | "records-changed";

/**
 * Signs: freezes what `content` makes of all that is written at that moment, in the transaction that keeps it, so that nothing slips
 * in between. The records must have the revision that was computed with.
 */
export async function freeze(
  reach: FiguresReach,
  audit: number,
  of: { readonly revision: string; readonly at: Date },
  content: (
    work: AuditWork,
    version: number,
    reason: string | null,
  ) => Omit<SignedVersion, "version" | "reason" | "by" | "at"> | null,
): Promise<{ readonly version: number } | NotSigned | "missing"> {
  let answer: { version: number } | NotSigned | "missing" = "not-open";
  await inOpenAudit(reach, audit, async (client) => {
    if ((await revision(reach)) !== of.revision) {
      answer = "records-changed";
      return;
    }
    const { rows } = await client.query<{ version: number; reason: string | null }>(
      `select coalesce(max(s.version), 0) + 1 as version, a.restate_reason as reason
       from audits a left join signed_audits s on s.audit_id = a.id where a.id = $1 group by a.restate_reason`,
      [audit],
    );
    const { version, reason } = rows[0] ?? { version: 1, reason: null };
    const made = content(await writtenIn(client, audit), version, reason);
    if (!made) {
      answer = "missing";
      return;
    }
    await client.query(
      `insert into signed_audits (audit_id, version, reason, content, sha256, computed_sha256, by, at) values ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [audit, version, reason, made.content, made.sha256, made.computedSha256, reach.by, of.at],
    );
    await client.query("update audits set restate_reason = null, restate_by = null where id = $1", [
      audit,
    ]);
    answer = { version };
  });
  return answer;
}

async function versionsOf(audit: number): Promise<SignedVersion[]> {
  const { rows } = await pool().query<SignedVersion>(
    `select version, reason, content, sha256, computed_sha256 as "computedSha256", by, ${isoSql("at")} as at
     from signed_audits where audit_id = $1 order by version`,
    [audit],
  );
  return rows;
}
