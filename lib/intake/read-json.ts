import { createReadStream } from "node:fs";
import { gathered } from "./batched";
import { jsonItems } from "./json-items";
import { jsonRow } from "./json-row";
import { linesOf } from "./lines-of";
import { mostColumns, refuseManyColumns } from "./most-columns";
import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";

/** How names are compared; without it in lower case, as those of the record format. */
export type NameOf = (key: string) => string;

/** Reads an array of objects; `line` is the number of the item, from 1. */
export async function readJson(path: string, name: string): Promise<RawSheet | undefined> {
  return sheetOf(name, jsonItemRows(path, name));
}

/** Reads one object a line; `line` is the line's number. Undefined where the file is empty. */
export async function readNdjson(path: string, name: string): Promise<RawSheet | undefined> {
  const sheet = await sheetOf(name, jsonLineRows(path));
  return sheet.empty ? undefined : sheet;
}

/** So many rows tell which columns there are; the rows of a file need not all have the same. */
const rowsLookedAt = 100;

async function sheetOf(
  name: string,
  rows: AsyncGenerator<RawRow>,
): Promise<RawSheet & { empty: boolean }> {
  const read: RawRow[] = [];
  const names = new Set<string>();
  while (read.length < rowsLookedAt) {
    const { done, value } = await rows.next();
    if (done) break;
    read.push(value);
    for (const key of Object.keys(value.cells)) names.add(key);
    if (names.size > mostColumns) await rows.return(undefined);
    refuseManyColumns(names.size, name);
  }
  const close = async () => void (await rows.return(undefined));
  return {
    ...{ name, title: name, header: [...names] },
    ...{ rows: gathered(chained(read, rows)), close, empty: read.length === 0 },
  };
}

async function* chained(
  read: readonly RawRow[],
  rest: AsyncGenerator<RawRow>,
): AsyncGenerator<RawRow> {
  yield* read;
  yield* rest;
}

/** The objects of a file that has one a line, as rows. */
export async function* jsonLineRows(path: string, nameOf?: NameOf): AsyncGenerator<RawRow> {
  for await (const lines of linesOf(createReadStream(path))) {
    for (const { number, text, tooLong } of lines)
      if (text.trim() !== "") yield jsonRow(text, tooLong, number, nameOf);
  }
}

/** The objects of a file that holds one array of them, as rows. @throws UnreadableFile where it holds no array */
export async function* jsonItemRows(
  path: string,
  name: string,
  nameOf?: NameOf,
): AsyncGenerator<RawRow> {
  let line = 0;
  for await (const item of jsonItems(createReadStream(path))) {
    if (item === "no array") {
      throw new UnreadableFile(
        name,
        "it is no JSON array of rows; write [ { … }, { … } ], or one object a line in a file that ends in .ndjson.",
      );
    }
    line += 1;
    if (typeof item !== "string") yield jsonRow(item.text, item.tooLong, line, nameOf);
    else yield { line, cells: {}, troubles: [endings[item]], misplaced: true };
  }
}

const endings = {
  "text after the array": {
    found: "text after the end of the array",
    remedy:
      "one file holds one array; take out what stands after it, or bring it in as a file of its own",
  },
  "not closed": {
    found: "the end of the file within the array",
    remedy: "the file seems to be cut off; bring in a whole one",
  },
};
