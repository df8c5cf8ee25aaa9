import { holderReach } from "@/lib/access/reach";
import { sign } from "@/lib/reports/audits/scope-acts";
import { importRecords, type Source } from "@/lib/reports/import-records";
import { loadBackup } from "@/lib/store/backup/load-backup";
import { checkedBackup } from "@/lib/store/backup/read-backup";
import { migrate } from "@/lib/store/home/migrate";
import { undoImport } from "@/lib/store/import/undo-import";
import { mendRows } from "@/lib/store/mend/mend-rows";
import { undoMend } from "@/lib/store/mend/undo-mend";
import { lead } from "../reports/audits/audit-home";
import { remake } from "../store/mend/remake";
import { slips } from "./record-files";

/** What there is to act on in the base database. */
export type Stage = {
  readonly files: readonly Source[];
  readonly audit: string;
  /** The import and the mend that are taken back. */
  readonly undoImport: number;
  readonly undoMend: number;
  /** A backup of the base with one import more. */
  readonly backup: string;
};

/** The acts that are broken off. */
export const actNames = ["import", "sign", "mend", "undo import", "undo mend", "restore"] as const;
export type ActName = (typeof actNames)[number] | "migrate";

export const key = Buffer.alloc(32, 7);
const { records } = holderReach();

/** Does it on the database of DATABASE_URL; whoever gets an answer may rely on it. */
export async function act(name: ActName, stage: Stage): Promise<void> {
  if (name === "import") await bringFilesIn(stage.files);
  else if (name === "sign") {
    const answer = await sign(lead, { audit: stage.audit, sure: "yes" });
    if (!answer.done) throw new Error(JSON.stringify(answer));
  } else if (name === "mend") await mendSlip("irrigation", "irrigant", slips.irrigant, "naocl");
  else if (name === "undo import") await undoImport(records, stage.undoImport);
  else if (name === "undo mend") await undoMend(records, stage.undoMend);
  else if (name === "restore") {
    const manifest = await checkedBackup(stage.backup);
    await loadBackup(process.env.DATABASE_URL ?? "", stage.backup, manifest, true);
  } else await migrate(process.env.DATABASE_URL ?? "");
}

export async function bringFilesIn(files: readonly Source[]): Promise<number> {
  const how = { zone: "Europe/London", key, heldListed: 0 };
  return (await importRecords(records, files, how)).importId;
}

export async function mendSlip(
  table: "irrigation" | "canals",
  column: string,
  from: string,
  to: string,
): Promise<number> {
  const changes = { [column]: { from: from.toUpperCase(), to } };
  const { mendId } = await mendRows(records, {}, remake(changes), {
    ...{ table, changes, zone: "Europe/London", examples: 0, tryOnly: false },
  });
  return mendId;
}
