import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { missingFields, unusedColumns } from "@/lib/intake/propose/propose";
import type { Sheet } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { patientKey } from "@/lib/store/home/patient-key";
import { pathOfWaiting, saveDraft, type WaitingFile, waitingFile } from "@/lib/store/waiting";
import { count } from "@/lib/views/quantity";
import { intakeContext } from "./import-records";
import { mappingOf, NoSuchMapping } from "./mappings-named";

/** What a mapping makes of a file. */
export type Tried = {
  readonly tables: readonly TriedTable[];
  /** Required fields that nothing feeds, as "sessions: tooth_notation". */
  readonly missing: readonly string[];
  readonly unused: readonly string[];
  /** Every row was looked at, not the first alone. */
  readonly whole: boolean;
  readonly wrong?: string;
};
export type TriedTable = {
  readonly table: string;
  readonly good: string;
  readonly held: string;
  /** Fields in the order of the mapping. */
  readonly fields: readonly string[];
  readonly rows: readonly {
    readonly line: number;
    readonly cells: readonly string[];
    readonly why: string;
  }[];
  /** Why rows would be held, the most frequent first. */
  readonly reasons: readonly {
    readonly words: string;
    readonly rows: string;
    readonly example: string;
  }[];
};

const rowsShown = 8;
/** Without the whole file, so many rows of each table are looked at. */
const rowsTried = 200;
const reasonsShown = 12;

const typed = z.object({
  id: z.coerce.number().int().positive(),
  mapping: z.string().max(2_000_000),
});

/**
 * Keeps a draft and says what it makes of the file: of its first rows, or with `whole` of all of them. Nothing is stored but the draft.
 *
 * @throws Refused
 */
export async function tryMapping(
  viewer: Viewer,
  form: Readonly<Record<string, string>>,
  whole: boolean,
): Promise<Tried> {
  const reach = recordsReach(viewer);
  const nothing = { tables: [], missing: [], unused: [], whole };
  const { id, mapping: text } = typed.parse(form);
  const file = await waitingFile(reach, id);
  if (!file) return { ...nothing, wrong: "The file waits no longer." };
  let mapping: Mapping;
  try {
    mapping = mappingOf(file.name, text);
  } catch (trouble) {
    if (!(trouble instanceof NoSuchMapping)) throw trouble;
    return { ...nothing, wrong: trouble.message };
  }
  await saveDraft(reach, id, mapping);
  const about = {
    missing: missingFields(mapping).map(({ table, field }) => `${table}: ${field}`),
    unused: unusedColumns(mapping),
    whole,
  };
  try {
    return { ...about, tables: await triedTables(reach, file, mapping, whole) };
  } catch (trouble) {
    if (!(trouble instanceof UnreadableFile)) throw trouble;
    return { ...about, tables: [], wrong: trouble.message };
  }
}

async function triedTables(
  reach: RecordsReach,
  file: WaitingFile,
  mapping: Mapping,
  whole: boolean,
): Promise<TriedTable[]> {
  const context = await intakeContext(reach, { zone: file.zone, key: await patientKey() });
  const tried: TriedTable[] = [];
  let place = 0;
  for await (const sheet of readMapped(pathOfWaiting(file), file.name, mapping, context)) {
    const fields = Object.keys(mapping.tables[place++]?.fields ?? {}).filter(
      (name) => !name.includes("."),
    );
    tried.push(await triedTable(sheet.table, sheet.rows, fields, whole));
  }
  return tried;
}

async function triedTable(
  table: string,
  rows: Sheet["rows"],
  fields: readonly string[],
  whole: boolean,
): Promise<TriedTable> {
  const { good, held, shown, reasons } = await gathered(rows, fields, whole);
  return {
    ...{ table, fields, good: count(good), held: count(held), rows: shown },
    reasons: [...reasons.values()]
      .sort((one, other) => other.rows - one.rows)
      .slice(0, reasonsShown)
      .map(({ words, rows: times, example }) => ({ words, rows: count(times), example })),
  };
}

async function gathered(rows: Sheet["rows"], fields: readonly string[], whole: boolean) {
  let good = 0;
  let held = 0;
  const shown: { line: number; cells: string[]; why: string }[] = [];
  const reasons = new Map<string, { words: string; rows: number; example: string }>();
  for await (const row of rows) {
    const cells = row.verdict === "good" ? row.values : row.raw;
    if (row.verdict === "good") good += 1;
    else {
      held += 1;
      for (const { column = "the row", found, remedy, sentence } of row.reasons.slice(0, 1)) {
        const key = `${column} ${remedy.replace(/\d+/g, "#")}`;
        const before = reasons.get(key);
        if (before) before.rows += 1;
        else
          reasons.set(key, {
            words: `${column}: "${found}"; ${remedy}`,
            rows: 1,
            example: sentence,
          });
      }
    }
    if (shown.length < rowsShown)
      shown.push({
        line: row.line,
        cells: fields.map((name) =>
          name === "patient" && cells[name] ? "(not shown)" : shownAs(cells[name]),
        ),
        why:
          row.verdict === "good"
            ? ""
            : row.reasons.map(({ column = "", remedy }) => `${column}: ${remedy}`).join("; "),
      });
    if (!whole && good + held >= rowsTried) break;
  }
  return { good, held, shown, reasons };
}

function shownAs(value: unknown): string {
  if (value === undefined) return "";
  return typeof value === "boolean" ? (value ? "yes" : "no") : String(value);
}
