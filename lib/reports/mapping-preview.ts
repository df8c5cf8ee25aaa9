import type { RecordsReach } from "@/lib/access/reach";
import { checkMisplaced, checkRow } from "@/lib/intake/check-row";
import { fieldsOf } from "@/lib/intake/mapping/field-of";
import { columnsRead } from "@/lib/intake/mapping/fits";
import { rowMapper } from "@/lib/intake/mapping/map-row";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { alike } from "@/lib/intake/mapping/words";
import type { RawRow } from "@/lib/intake/raw-row";
import { openFile } from "@/lib/intake/recognise/open-file";
import type { Context, GoodRow, HeldRow } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { patientKey } from "@/lib/store/home/patient-key";
import { pathOfWaiting, type WaitingFile } from "@/lib/store/waiting";
import { fieldWords } from "@/lib/views/mapping/field-words";
import { fedFields } from "@/lib/views/mapping/missing";
import type { FirstRows, PreviewTable, PreviewView } from "@/lib/views/mapping/preview-view";
import { count } from "@/lib/views/quantity";
import { intakeContext } from "./import-records";
import { hiddenColumns } from "./mapping-hidden";
import { type ShownRow, shownRows } from "./preview-rows";

const rowsLooked = 300;
const fileRowsShown = 6;
const shortest = 200;

/** What the first rows of a file that waits become under a draft; nothing is stored. */
export async function previewMapping(
  reach: RecordsReach,
  file: WaitingFile,
  draft: Mapping,
): Promise<PreviewView> {
  const context = await contextOf(reach, file, draft);
  try {
    const { header, rows } = await firstRows(file, draft);
    const missing = [...new Set(draft.tables.flatMap(columnsRead))].filter(
      (name) => !header.some((one) => alike(one) === alike(name)),
    );
    const wrong =
      missing.length > 0
        ? `Not in the file: ${missing.map((one) => `“${one}”`).join(", ")}.`
        : null;
    return {
      wrong,
      first: shownFirst(header, rows, draft),
      looked: count(rows.length),
      tables: draft.tables.map((_, place) => tableOf(draft, place, header, rows, context)),
    };
  } catch (trouble) {
    if (!(trouble instanceof UnreadableFile)) throw trouble;
    return { wrong: trouble.message, first: { columns: [], rows: [] }, tables: [], looked: "0" };
  }
}

/** What the checks need to know, with the mapping's own time zone where it has one. */
export async function contextOf(
  reach: RecordsReach,
  { zone }: Pick<WaitingFile, "zone">,
  { zone: own }: Mapping,
): Promise<Context> {
  const context = await intakeContext(reach, { zone, key: await patientKey() });
  return own ? { ...context, zoneOf: () => own } : context;
}

async function firstRows(
  file: WaitingFile,
  draft: Mapping,
): Promise<{ header: readonly string[]; rows: RawRow[] }> {
  const sheet = await openFile(pathOfWaiting(file), file.name, draft.file);
  if (!sheet) throw new UnreadableFile(file.name, "nothing stands there under this reading.");
  const rows: RawRow[] = [];
  try {
    for await (const row of sheet.rows) {
      rows.push(row);
      if (rows.length >= rowsLooked) break;
    }
  } finally {
    await sheet.close();
  }
  return { header: sheet.header, rows };
}

function shownFirst(header: readonly string[], rows: readonly RawRow[], draft: Mapping): FirstRows {
  const hidden = hiddenColumns(draft, header);
  return {
    columns: header.map((name) => ({ name, hidden: hidden.has(name) })),
    rows: rows
      .filter(({ misplaced }) => !misplaced)
      .slice(0, fileRowsShown)
      .map(({ line, cells }) => ({
        line,
        cells: header.map((name) =>
          hidden.has(name) ? "" : (cells[name] ?? "").slice(0, shortest),
        ),
      })),
  };
}

function tableOf(
  draft: Mapping,
  place: number,
  header: readonly string[],
  rows: readonly RawRow[],
  context: Context,
): PreviewTable {
  const feed = draft.tables[place];
  if (!feed) throw new Error(`The draft has no table ${place}.`);
  const map = rowMapper(draft, feed, header, context);
  const fed = fedFields(feed);
  const fields = fieldsOf(feed.table)
    .map(({ name }) => name)
    .filter((name) => fed.has(name) && !name.includes("."));
  const made: ShownRow[] = [];
  for (const row of rows) {
    const found = checked(row, place === 0);
    if (found) made.push(found);
  }
  return {
    table: feed.table,
    fields: fields.map((name) => ({ value: name, words: fieldWords(name) })),
    ...shownRows(feed.table, fields, made, (practice) => context.zoneOf(practice) ?? "UTC"),
    none: count(rows.length - made.length),
  };

  function checked(row: RawRow, first: boolean): GoodRow | HeldRow | undefined {
    const at = { file: "", line: row.line };
    if (!feed) return undefined;
    if (row.misplaced)
      return first ? checkMisplaced(feed.table, {}, at, row.troubles ?? []) : undefined;
    const mapped = map(row);
    return mapped && checkRow(feed.table, mapped.cells, at, context, mapped.troubles, mapped.match);
  }
}
