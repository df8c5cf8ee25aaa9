import { fileAsItWas } from "../file-as-it-was";
import type { FileLayout } from "../mapping/file-layout";
import type { RawSheet } from "../raw-row";
import { UnreadableFile } from "../unreadable-file";
import { columnProfile } from "./column-profile";
import { decimalVotes } from "./decimal-sign";
import { encodingOf } from "./encoding";
import { fileKind } from "./file-kind";
import { openFile } from "./open-file";
import type { Reading, Recognised } from "./recognised";
import { separationOf } from "./separation";
import { sheetLayout } from "./sheet-layout";
import { storable } from "./storable";

const rowsShown = 10;
/** A cell of the first rows is shown so far. */
const longestShown = 200;

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
  const refuseChanged = await fileAsItWas(path, name);
  const kind = await fileKind(path, name);
  const { layout, readings, sheets = [] } = await layoutOf(path, name, kind, asked);
  const { votes, ...looked } = await lookedThrough(path, name, layout);
  const { notation, reading, unsettled } = votes.told();
  await refuseChanged();
  return {
    ...looked,
    sheets,
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
): Promise<{ layout: FileLayout; readings: Reading[]; sheets?: readonly string[] }> {
  const plain: FileLayout = {
    ...{ kind, encoding: "utf-8", separator: ",", quote: '"', headerLine: 1 },
    ...{ decimal: ".", thousands: "" },
  };
  if (kind === "workbook") {
    const { layout, ...told } = await sheetLayout(path, name, asked);
    return { layout: { ...plain, ...layout }, ...told };
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

async function opened(path: string, name: string, layout: FileLayout): Promise<RawSheet> {
  const sheet = await openFile(path, name, layout);
  if (!sheet) throw new UnreadableFile(name, `nothing stands from line ${layout.headerLine} on.`);
  if (sheet.header.length === 0) {
    await sheet.close();
    throw new UnreadableFile(
      name,
      layout.kind === "json-lines"
        ? "it is no list of objects; write them as one array, or one object a line."
        : "its rows have no columns with names; export it again.",
    );
  }
  return sheet;
}

/** One pass over all rows: what the columns hold, and what their numbers tell of the decimal sign. */
async function lookedThrough(path: string, name: string, layout: FileLayout) {
  const sheet = await opened(path, name, layout);
  const count = sheet.header.length;
  const profiles = sheet.header.map((column) => ({
    column,
    profile: columnProfile(column, count),
  }));
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
      if (firstRows.length < rowsShown) firstRows.push(shown(row.cells));
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

function shown(cells: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(cells).map(([name, text]) => [name, storable(text.slice(0, longestShown))]),
  );
}
