import type { FiguresReach } from "@/lib/access/reach";
import { auditWithin } from "@/lib/store/audits/audits";
import { signedVersions } from "@/lib/store/audits/signed";
import { auditName } from "@/lib/views/audits/audit-name";
import { changeLines } from "@/lib/views/audits/change-lines";
import { moment } from "@/lib/views/day";
import { verifiedWords } from "./history";
import { verifyVersion } from "./verify";

/** One signed version against its fingerprint and today's records. */
export type ProvenVersion = {
  readonly version: number;
  readonly state: "unchanged" | "changed" | "broken";
  readonly lines: readonly string[];
  readonly sha256: string;
  readonly computedSha256: string;
  readonly computedNow: string;
};

/** Every signed version of an audit proven; null where there is no such audit within the reach. */
export async function verifyAudit(
  reach: FiguresReach,
  id: number,
): Promise<{ readonly name: string; readonly versions: readonly ProvenVersion[] } | null> {
  const row = await auditWithin(reach, id);
  if (!row) return null;
  const versions: ProvenVersion[] = [];
  for (const version of await signedVersions(reach, id)) {
    const verified = await verifyVersion(reach, row, version);
    const changes = verified.changes && changeLines(verified.changes);
    versions.push({
      version: version.version,
      state: verified.broken ? "broken" : changes ? "changed" : "unchanged",
      lines: [
        `Version ${version.version}, signed by ${version.by} on ${moment(new Date(version.at), "UTC")} UTC${version.reason ? `, restated because: ${version.reason}` : ""}`,
        verifiedWords(verified),
        ...(changes ? [changes.summary, ...changes.records, ...changes.figures] : []),
      ],
      sha256: version.sha256,
      computedSha256: version.computedSha256,
      computedNow: verified.computedNow,
    });
  }
  return { name: auditName(row), versions };
}
