import type { FiguresReach } from "@/lib/access/reach";
import type { AuditContent, SignedAs } from "@/lib/audit/cycle/audit-content";
import type { AuditRow } from "@/lib/store/audits/audits";
import { heldInPeriod } from "@/lib/store/audits/held-in-period";
import { freeze, type NotSigned } from "@/lib/store/audits/signed";
import { revision } from "@/lib/store/facts/revision";
import { dataState } from "@/lib/store/quality/data-state";
import { canonicalJson } from "@/lib/views/canonical-json";
import { sha256 } from "../fingerprint";
import { softwareVersion } from "../software-version";
import { liveContent, missingIn } from "./audit-at";

/**
 * Signs an audit: what the records come to and all that is written is kept as canonical JSON with its fingerprint. Nothing is signed
 * where something is missing, where the records changed meanwhile, or where the audit is not open.
 *
 * @param reach the whole of the lead's
 */
export async function signAudit(
  reach: FiguresReach,
  row: AuditRow,
): Promise<{ readonly version: number } | NotSigned | "missing"> {
  const at = new Date();
  const before = await revision(reach);
  const live = await liveContent(reach, row);
  const { published } = await dataState(reach);
  const { withoutDay } = await heldInPeriod(reach, live.computed.period);
  return freeze(reach, row.id, { revision: before, at }, (work, version, reason) => {
    const signed: SignedAs = {
      version,
      reason,
      by: reach.by,
      at: at.toISOString(),
      cutOff: published?.toISOString() ?? null,
      heldWithoutDay: withoutDay,
      software: `Canal Audit ${softwareVersion}`,
    };
    const content: AuditContent = { ...live, work, signed };
    if (missingIn(content).length > 0) return null;
    const text = canonicalJson(content);
    return {
      content: text,
      sha256: sha256(text),
      computedSha256: sha256(canonicalJson(content.computed)),
    };
  });
}
