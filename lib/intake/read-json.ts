import { createReadStream } from "node:fs";
import { createInterface } from "node:readline";
import { z } from "zod";
import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";

const item = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]));

/** A line or item longer than this is no row of the record format. */
const longestItem = 1_000_000;

/** Reads an array of objects; `line` is the number of the item, from 1. */
export async function readJson(path: string, name: string): Promise<RawSheet | undefined> {
  return sheetOf(name, itemsOf(path, name));
}

/** Reads one object a line. */
export async function readNdjson(path: string, name: string): Promise<RawSheet | undefined> {
  return sheetOf(name, linesOf(path));
}

/** The header is that of the first row that has one; later rows may have other columns. */
async function sheetOf(name: string, rows: AsyncGenerator<RawRow>): Promise<RawSheet | undefined> {
  const read: RawRow[] = [];
  for await (const row of { [Symbol.asyncIterator]: () => ({ next: () => rows.next() }) }) {
    read.push(row);
    if (row.cells || read.length >= 100) break;
  }
  const first = read.find((row) => row.cells);
  if (read.length === 0) return undefined;
  return { name, title: name, header: Object.keys(first?.cells ?? {}), rows: chained(read, rows) };
}

async function* chained(read: readonly RawRow[], rest: AsyncGenerator<RawRow>): AsyncGenerator<RawRow> {
  yield* read;
  yield* rest;
}

async function* linesOf(path: string): AsyncGenerator<RawRow> {
  let line = 0;
  for await (const text of createInterface({ input: createReadStream(path), crlfDelay: Number.POSITIVE_INFINITY })) {
    line += 1;
    const trimmed = (line === 1 ? text.replace(/^\ufeff/, "") : text).trim();
    if (trimmed !== "") yield rowOf(trimmed, line);
  }
}

/** Cuts an array into its items by their braces, so that one item at a time is in memory. */
async function* itemsOf(path: string, name: string): AsyncGenerator<RawRow> {
  const notAnArray = () => new UnreadableFile(name, "it is no JSON array of rows; write [ { … }, { … } ], or one object a line in a file that ends in .ndjson.");
  let state: "before" | "between" | "within" | "after" = "before";
  let item = 0;
  let depth = 0;
  let quoted = false;
  let escaped = false;
  let text = "";
  for await (const chunk of createReadStream(path, { encoding: "utf8" })) {
    for (const mark of chunk as string) {
      if (state === "within") {
        if (text.length < longestItem) text += mark;
        if (quoted) {
          if (escaped) escaped = false;
          else if (mark === "\\") escaped = true;
          else if (mark === '"') quoted = false;
        } else if (mark === '"') quoted = true;
        else if (mark === "{" || mark === "[") depth += 1;
        else if (mark === "}" || mark === "]") depth -= 1;
        if (depth === 0) {
          item += 1;
          yield rowOf(text, item);
          text = "";
          state = "between";
        }
      } else if (/[\s\ufeff,]/.test(mark)) {
        if (mark === "," && state !== "between") throw notAnArray();
      } else if (state === "before" && mark === "[") state = "between";
      else if (state === "between" && mark === "{") {
        state = "within";
        depth = 1;
        text = "{";
      } else if (state === "between" && mark === "]") state = "after";
      else if (item === 0) throw notAnArray();
      else {
        yield { line: item + 1, trouble: { found: `"${mark}"`, remedy: "an item is an object in braces; mend the file there and bring it in again" } };
        return;
      }
    }
  }
  if (state === "before") throw notAnArray();
  if (state !== "after") {
    yield { line: item + 1, trouble: { found: "the end of the file", remedy: "the array is not closed; the file seems to be cut off, so bring in a whole one" } };
  }
}

function rowOf(text: string, line: number): RawRow {
  const trouble = (remedy: string): RawRow => ({ line, trouble: { found: "something else than a row", remedy } });
  if (text.length >= longestItem) return trouble("the item is too long for a row; is a quote or brace never closed?");
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return trouble("it is no JSON object; mend its quotes and commas");
  }
  const checked = item.safeParse(parsed);
  if (!checked.success) return trouble("a row is an object of texts, numbers, yes or no and null, with nothing nested in it");
  const cells: Record<string, string> = {};
  for (const [column, value] of Object.entries(checked.data)) {
    const name = column.trim().toLowerCase();
    cells[name] = value === null ? "" : value === true ? "yes" : value === false ? "no" : String(value);
  }
  return { line, cells };
}
