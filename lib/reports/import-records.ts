import type { RecordsReach } from "@/lib/access/reach";
import { readSheets } from "@/lib/intake/read-sheets";
import type { Context } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import {
  type FileCounts,
  filesOfImport,
  type HeldRow,
  heldOfImport,
} from "@/lib/store/import/imports";
import { type ImportProgress, runImport } from "@/lib/store/import/run-import";
import { zonesOfPractices } from "@/lib/store/records/practices";
import { keptSetting } from "@/lib/store/records/settings";
import { keyFingerprint, patientPseudonym } from "./patient-pseudonym";

export type Source = {
  /** Where the file lies now. */
  readonly path: string;
  /** What the person calls it; its name may tell the table. */
  readonly name: string;
  /** Found in a folder, not named by the person: passed over where it holds no table. */
  readonly found?: boolean;
};

export type ImportResult = {
  readonly importId: number;
  readonly files: FileCounts[];
  readonly held: HeldRow[];
  /** Files of a folder that hold no table, each with why. */
  readonly passedOver: string[];
};

export type ImportHow = {
  /** IANA time zone of practices not yet known. */
  readonly zone: string;
  /** The home's patient key. */
  readonly key: Buffer;
  /** Told the import's id before anything is read. */
  readonly onBegin?: (importId: number) => void;
  readonly onProgress?: (progress: ImportProgress) => void;
  /** List no more held rows than this; the counts are whole. */
  readonly heldListed?: number;
};

/**
 * Brings record files in, in one transaction to every reader.
 *
 * @throws UnreadableFile where a file is none of the record format's; nothing is stored then.
 */
export async function importRecords(
  reach: RecordsReach,
  sources: readonly Source[],
  how: ImportHow,
): Promise<ImportResult> {
  const fingerprint = keyFingerprint(how.key);
  if ((await keptSetting(reach, "patient key fingerprint", fingerprint)) !== fingerprint) {
    throw new Error(
      "The patient key of this home is not the one these records were read with; put the right key back, or patients will not be recognised.",
    );
  }
  const context = await contextOf(reach, how);
  const passedOver: string[] = [];
  const importId = await runImport(reach, sheetsOf(sources, context, passedOver), how);
  return {
    importId,
    passedOver,
    files: await filesOfImport(reach, importId),
    held: await heldOfImport(reach, importId, how.heldListed),
  };
}

async function contextOf(reach: RecordsReach, how: ImportHow): Promise<Context> {
  const zones = await zonesOfPractices(reach);
  const all = new Set(zones.size === 0 ? [how.zone] : zones.values());
  const theOnly = all.size === 1 ? [...all][0] : undefined;
  return {
    zoneOf: (practice) => (practice === undefined ? theOnly : (zones.get(practice) ?? how.zone)),
    pseudonym: (practice, reference) => patientPseudonym(how.key, practice, reference),
    now: new Date(),
  };
}

async function* sheetsOf(sources: readonly Source[], context: Context, passedOver: string[]) {
  for (const source of sources) {
    try {
      yield* readSheets(source.path, source.name, context);
    } catch (trouble) {
      if (!source.found || !(trouble instanceof UnreadableFile)) throw trouble;
      passedOver.push(trouble.message);
    }
  }
}
