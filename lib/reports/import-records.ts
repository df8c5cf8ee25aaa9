import type { RecordsReach } from "@/lib/access/reach";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { readSheets } from "@/lib/intake/read-sheets";
import type { Context } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { keyFingerprint } from "@/lib/store/home/patient-key";
import type { Again } from "@/lib/store/import/broken-off";
import {
  type FileCounts,
  filesOfImport,
  type HeldRow,
  heldOfImport,
} from "@/lib/store/import/imports";
import { type ImportProgress, runImport, type SheetToImport } from "@/lib/store/import/run-import";
import { zonesOfPractices } from "@/lib/store/records/practices";
import { keptSetting } from "@/lib/store/records/settings";
import { type HowToRead, howToRead, type KnownMapping, knownMappings } from "./how-to-read";
import { patientPseudonym } from "./patient-pseudonym";
import { rowsExpected } from "./rows-expected";
import { tablesToCome } from "./tables-to-come";

export type Source = {
  /** Where the file lies now. */
  readonly path: string;
  /** What the person calls it; its name may tell the table. */
  readonly name: string;
  /** Found in a folder, not named by the person: passed over where it holds no table. */
  readonly found?: boolean;
  /** How it is read, where that is settled already. */
  readonly reading?: HowToRead;
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
  /** Mappings to choose from instead of the kept ones. */
  readonly mappings?: readonly KnownMapping[];
  /** Folder of the home's uploads that holds the files. */
  readonly upload?: string;
  /** An import that was broken off, begun again with the same files. */
  readonly again?: Again;
  /** Told the import's id before anything is read. */
  readonly onBegin?: (importId: number) => void;
  readonly onProgress?: (progress: ImportProgress) => void;
  /** List no more held rows than this; the counts are whole. */
  readonly heldListed?: number;
};

/**
 * Brings files in, in one transaction to every reader: those of the record format, and those of other systems that a
 * mapping fits.
 *
 * @throws UnreadableFile where a file is none of these; nothing is stored then.
 */
export async function importRecords(
  reach: RecordsReach,
  sources: readonly Source[],
  how: ImportHow,
): Promise<ImportResult> {
  const context = await intakeContext(reach, how);
  const passedOver: string[] = [];
  const toRead = await readingOf(reach, sources, how, context, passedOver);
  const expected = await Promise.all(
    toRead.map(({ source, by }) => rowsExpected(source.path, by?.mapping)),
  );
  const importId = await runImport(reach, sheetsOf(toRead, context, passedOver), {
    ...how,
    keyFingerprint: keyFingerprint(how.key),
    tables: await tablesToCome(toRead, context),
    rowsExpected: expected.includes(undefined)
      ? undefined
      : expected.reduce((sum: number, rows) => sum + (rows ?? 0), 0),
  });
  return {
    importId,
    passedOver,
    files: await filesOfImport(reach, importId),
    held: await heldOfImport(reach, importId, how.heldListed),
  };
}

/** What the checks need of the house. @throws Error where the home's patient key is not that of its records. */
export async function intakeContext(
  reach: RecordsReach,
  how: Pick<ImportHow, "zone" | "key">,
): Promise<Context> {
  const fingerprint = keyFingerprint(how.key);
  if ((await keptSetting(reach, "patient key fingerprint", fingerprint)) !== fingerprint) {
    throw new Error(
      "The patient key of this home is not the one these records were read with; put the right key back, or patients will not be recognised.",
    );
  }
  const zones = await zonesOfPractices(reach);
  const all = new Set(zones.size === 0 ? [how.zone] : zones.values());
  const theOnly = all.size === 1 ? [...all][0] : undefined;
  return {
    zoneOf: (practice) => (practice === undefined ? theOnly : (zones.get(practice) ?? how.zone)),
    pseudonym: (practice, reference) => patientPseudonym(how.key, practice, reference),
    now: new Date(),
  };
}

const mappingHint =
  "If another system wrote it, make a mapping once: bring it in on the page Records, or name one with --mapping.";

type ToRead = { readonly source: Source; readonly by?: KnownMapping };

/** Which files are read, and by what; those that a folder merely had among others may be passed over. */
async function readingOf(
  reach: RecordsReach,
  sources: readonly Source[],
  how: ImportHow,
  context: Context,
  passedOver: string[],
): Promise<ToRead[]> {
  const known = how.mappings ?? (await knownMappings(reach));
  const toRead: ToRead[] = [];
  for (const source of sources) {
    const reading = source.reading ?? (await howToRead(source, known, context));
    if (reading.as === "records") toRead.push({ source });
    else if (reading.as === "mapped") toRead.push({ source, by: reading.by });
    else {
      const trouble = new UnreadableFile(source.name, `${reading.why} ${mappingHint}`);
      if (!source.found) throw trouble;
      passedOver.push(trouble.message);
    }
  }
  return toRead;
}

async function* sheetsOf(
  toRead: readonly ToRead[],
  context: Context,
  passedOver: string[],
): AsyncGenerator<SheetToImport> {
  for (const { source, by } of toRead) {
    try {
      if (!by)
        for await (const sheet of readSheets(source.path, source.name, context))
          yield { ...sheet, rows: sheet.rows.batches };
      else
        for await (const sheet of readMapped(source.path, source.name, by.mapping, context))
          yield {
            ...sheet,
            rows: sheet.rows.batches,
            mapping: { name: by.mapping.name, version: by.version },
          };
    } catch (trouble) {
      if (!source.found || !(trouble instanceof UnreadableFile)) throw trouble;
      passedOver.push(trouble.message);
    }
  }
}
