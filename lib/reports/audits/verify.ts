import type { FiguresReach } from "@/lib/access/reach";
import type { AuditComputed } from "@/lib/audit/cycle/audit-content";
import { type RecordChanges, recordChanges } from "@/lib/audit/cycle/record-changes";
import type { AuditRow } from "@/lib/store/audits/audits";
import type { SignedVersion } from "@/lib/store/audits/signed";
import { canonicalJson } from "@/lib/views/canonical-json";
import { sha256 } from "../fingerprint";
import { contentOf, liveComputed } from "./audit-at";

/** What became of a signed version: its bytes, and what today's records would come to. */
export type Verified = {
  readonly version: SignedVersion;
  /** Why the kept bytes are not what was signed; null where they are. */
  readonly broken: string | null;
  /** The fingerprint of what the records come to now. */
  readonly computedNow: string;
  /** Null where the same records give the same bytes. */
  readonly changes: RecordChanges | null;
};

/** Proves a signed version against its fingerprint and against the records. */
export async function verifyVersion(
  reach: FiguresReach,
  row: AuditRow,
  version: SignedVersion,
): Promise<Verified> {
  const broken = brokenWords(version);
  // What is broken may not even be readable; the records are then computed for the scope as it is now.
  const signed = broken ? null : contentOf(version);
  const criteria = signed?.form.criteria ?? row.criteria;
  const now = canonicalJson(await liveComputed(reach, { ...row, criteria }));
  const computedNow = sha256(now);
  const same = computedNow === version.computedSha256;
  return {
    version,
    broken,
    computedNow,
    changes:
      same || !signed ? null : recordChanges(signed.computed, JSON.parse(now) as AuditComputed),
  };
}

function brokenWords(version: SignedVersion): string | null {
  if (sha256(version.content) !== version.sha256)
    return "The SHA-256 of what is kept is not the one that was signed.";
  const content = contentOf(version);
  if (canonicalJson(content) !== version.content)
    return "What is kept is not canonical JSON, as everything signed is.";
  if (sha256(canonicalJson(content.computed)) !== version.computedSha256)
    return "The SHA-256 of the figures within is not the one that was signed.";
  return null;
}
