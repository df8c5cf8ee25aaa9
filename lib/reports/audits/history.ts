import type { Viewer } from "@/lib/access/viewer";
import type { AuditTextRow } from "@/lib/records/audit-work";
import { auditsWithin } from "@/lib/store/audits/audits";
import { revisionsOf } from "@/lib/store/audits/texts";
import { type AuditHead, auditHead, stateWords } from "@/lib/views/audits/audit-head";
import { auditName } from "@/lib/views/audits/audit-name";
import { type ChangeLines, changeLines } from "@/lib/views/audits/change-lines";
import { lastWords } from "@/lib/views/audits/text-field";
import { textTitle } from "@/lib/views/audits/text-keys";
import { moment } from "@/lib/views/day";
import { auditAt } from "./audit-at";
import { type Verified, verifyVersion } from "./verify";

/** A signed version, and what later records would change of it. */
export type VersionLine = {
  readonly version: number;
  readonly words: string;
  readonly reason: string;
  readonly sha256: string;
  readonly computedSha256: string;
  readonly verified: string;
  readonly changes: ChangeLines | null;
};

export type HistoryPage = {
  readonly head: AuditHead;
  readonly versions: readonly VersionLine[];
  /** From audit to audit, the first first. */
  readonly trail: readonly {
    readonly id: number;
    readonly name: string;
    readonly state: string;
    readonly here: boolean;
  }[];
  readonly texts: readonly {
    readonly key: string;
    readonly title: string;
    readonly revisions: readonly {
      readonly revision: number;
      readonly words: string;
      readonly text: string;
    }[];
  }[];
};

/** Versions with what each would be today, the trail of audits, and every revision of every text. @throws Refused */
export async function historyPage(viewer: Viewer, id: string): Promise<HistoryPage | null> {
  const audit = await auditAt(viewer, id);
  if (!audit) return null;
  const { reach, row, versions, content } = audit;
  const verified: Verified[] = [];
  for (const version of versions) verified.push(await verifyVersion(reach, row, version));
  const texts = await Promise.all(
    content.work.texts.map(async ({ key }) => ({
      key,
      title: textTitle(key),
      revisions: (await revisionsOf(reach, row.id, key)).map(revisionLine),
    })),
  );
  const all = await auditsWithin(reach);
  return {
    head: auditHead(row, audit.open, audit.missing),
    versions: verified.map(versionLine),
    trail: trailOf(row.id, all).map((one) => ({
      ...{ id: one.id, name: auditName(one), state: stateWords(one), here: one.id === row.id },
    })),
    texts,
  };
}

function versionLine(one: Verified): VersionLine {
  const { version } = one;
  return {
    version: version.version,
    words: `Version ${version.version}, signed by ${version.by} on ${moment(new Date(version.at), "UTC")} UTC`,
    reason: version.reason ?? "",
    sha256: version.sha256,
    computedSha256: version.computedSha256,
    verified: verifiedWords(one),
    changes: one.changes ? changeLines(one.changes) : null,
  };
}

/** Whether a signed version is what was signed, and whether the records still come to it. */
export function verifiedWords({ broken, changes }: Verified): string {
  if (broken) return `Broken. ${broken}`;
  return changes
    ? "Changed: it is what was signed, and today's records would come to something else."
    : "Unchanged: it is what was signed, and today's records come to the same bytes.";
}

function revisionLine(one: AuditTextRow) {
  return { revision: one.revision, words: lastWords(one), text: one.text };
}

/** The audits that this one repeats, itself and those that repeat it, the first first. */
function trailOf<Row extends { readonly id: number; readonly previous: number | null }>(
  id: number,
  all: readonly Row[],
): Row[] {
  const linked = new Set([id]);
  for (let grown = true; grown; ) {
    const before = linked.size;
    for (const { id: one, previous } of all) {
      if (previous !== null && linked.has(one)) linked.add(previous);
      if (previous !== null && linked.has(previous)) linked.add(one);
    }
    grown = linked.size > before;
  }
  return all.filter((one) => linked.has(one.id)).sort((one, other) => one.id - other.id);
}
