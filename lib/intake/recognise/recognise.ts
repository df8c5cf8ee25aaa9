import { stat } from "node:fs/promises";
import type { FileLayout } from "../mapping/file-layout";
import type { RawSheet } from "../raw-row";
import { readWorkbook } from "../read-workbook";
import { UnreadableFile } from "../unreadable-file";
import { columnProfile } from "./column-profile";
import { decimalVotes } from "./decimal-sign";
import { encodingOf } from "./encoding";
import { fileKind } from "./file-kind";
import { openFile } from "./open-file";
import type { Reading, Recognised } from "./recognised";
import { separationOf } from "./separation";

/** More columns than this are no table of treatment records. */
const mostColumns = 2000;
const rowsShown = 10;

/**
 * Looks through the whole of a file of another system: how it is written, and what each column holds. Memory does not grow with
 * the file.
 *
 * @param asked what somebody settled by hand: the rest is looked at under it
 * @throws UnreadableFile in one sentence where no table can be read from it
 */
export async function recognise(
  path: string,
  name: string,
  asked: Partial<FileLayout> = {},
): Promise<Recognised> {
  const before = await stat(path);
  const kind = await fileKind(path, name);
  const { layout, readings } = await layoutOf(path, name, kind, asked);
  const { votes, ...looked } = await lookedThrough(path, name, layout);
  const { notation, reading, unsettled } = votes.told();
  const after = await stat(path);
  if (after.size !== before.size || after.mtimeMs !== before.mtimeMs)
    throw new UnreadableFile(name, "it changed while it was read; wait until it is written.");
  return {
    ...looked,
    layout: {
      ...layout,
      decimal: asked.decimal ?? notation.decimal,
      thousands:
        asked.thousands ?? (asked.decimal === notation.thousands ? "" : notation.thousands),
    },
    readings: [...readings, reading],
    decimalUnsettled: asked.decimal === undefined ? unsettled : null,
  };
}

async function layoutOf(
  path: string,
  name: string,
  kind: FileLayout["kind"],
  asked: Partial<FileLayout>,
): Promise<{ layout: FileLayout; readings: Reading[] }> {
  const plain: FileLayout = {
    ...{ kind, encoding: "utf-8", separator: ",", quote: '"', headerLine: 1 },
    ...{ decimal: ".", thousands: "" },
  };
  if (kind === "workbook") {
    const sheets = await sheetsOf(path, name);
    const sheet = asked.sheet ?? sheets[0];
    const reading: Reading = {
      about: "sheet",
      sure: sheets.length === 1 ? "certain" : "likely",
      why:
        sheets.length === 1
          ? "It has one sheet."
          : `It has ${sheets.length} sheets; the first is taken.`,
    };
    const headerLine = asked.headerLine ?? (await firstFull(path, name, sheet));
    return { layout: { ...plain, sheet, headerLine }, readings: [reading] };
  }
  if (kind !== "separated") return { layout: plain, readings: [] };
  const found = await encodingOf(path, name);
  const encoding = asked.encoding ?? found.encoding;
  const { layout, readings } = await separationOf(path, encoding, asked);
  return {
    layout: { ...plain, encoding, ...layout },
    readings: [found.reading, ...readings],
  };
}

async function sheetsOf(path: string, name: string): Promise<string[]> {
  const titles: string[] = [];
  for await (const sheet of readWorkbook(path, name)) {
    titles.push(sheet.title);
    await sheet.close();
  }
  if (titles.length === 0) throw new UnreadableFile(name, "it is empty; export it again.");
  return titles;
}

/** The first row of a sheet that has as many cells as the table below it: what stands above is its title. */
async function firstFull(path: string, name: string, sheet: string | undefined): Promise<number> {
  let widest = 0;
  const widths: { line: number; width: number }[] = [];
  for (let line = 1; line <= 20; line += 1) {
    const one = await openFile(path, name, {
      ...{ kind: "workbook", sheet, headerLine: line, encoding: "utf-8", separator: "," },
      ...{ quote: '"', decimal: ".", thousands: "" },
    });
    await one?.close();
    const width = one?.header.length ?? 0;
    widths.push({ line, width });
    widest = Math.max(widest, width);
  }
  return widths.find(({ width }) => width >= widest)?.line ?? 1;
}

async function opened(path: string, name: string, layout: FileLayout): Promise<RawSheet> {
  const sheet = await openFile(path, name, layout);
  if (!sheet) throw new UnreadableFile(name, `nothing stands from line ${layout.headerLine} on.`);
  if (sheet.header.length === 0) {
    await sheet.close();
    throw new UnreadableFile(name, "its rows have no columns with names; export it again.");
  }
  if (sheet.header.length > mostColumns) {
    await sheet.close();
    throw new UnreadableFile(
      name,
      `it has more than ${mostColumns} columns; is it a table of treatments?`,
    );
  }
  return sheet;
}

/** One pass over all rows: what the columns hold, and what their numbers tell of the decimal sign. */
async function lookedThrough(path: string, name: string, layout: FileLayout) {
  const sheet = await opened(path, name, layout);
  const profiles = sheet.header.map((column) => ({ column, profile: columnProfile(column) }));
  const votes = decimalVotes();
  const firstRows: Record<string, string>[] = [];
  let rows = 0;
  let ragged = 0;
  try {
    for await (const row of sheet.rows) {
      rows += 1;
      if (row.misplaced) {
        ragged += 1;
        continue;
      }
      votes.look(row.cells);
      if (firstRows.length < rowsShown) firstRows.push({ ...row.cells });
      for (const { column, profile } of profiles) profile.add(row.cells[column] ?? "");
    }
  } finally {
    await sheet.close();
  }
  if (rows === 0)
    throw new UnreadableFile(
      name,
      "there are no rows below its header; export it again, or leave it out.",
    );
  return { votes, rows, ragged, firstRows, columns: profiles.map(({ profile }) => profile.told()) };
}
