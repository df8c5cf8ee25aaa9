import { execFile } from "node:child_process";
import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { zipEntries } from "@/lib/intake/workbook/zip-entries";
import type { CameOf } from "./read-both-ways";
import { inlineRow, workbookOf, writeZip } from "./write-zip";

// Each file is far larger than the memory that the reading process is given. What comes of it is worked by hand: the rows
// written are counted, and the limits are the project's own.

const run = promisify(execFile);
const memoryMb = 128;
const mega = 1_000_000;

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-big-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each([
  [
    "100 MB in one field",
    "canals.csv",
    ["session_id,canal,preparation\nV-1,MB,", ...mb(100, "x"), "\nV-2,MB,rotary\n"],
    { good: 1, held: 1, reason: "line 2: found more than 1000000 characters in one line" },
    { good: 1, held: 1, reason: "line 2: found more than 1000000 characters in one line" },
  ],
  [
    "100 MB in one field in quotes, over many lines",
    "canals.csv",
    ['session_id,canal,preparation\nV-1,MB,"', ...mb(100, `${"x".repeat(9_999)}\n`), '"\n'],
    // A row each, none of which has three cells, and the last quote opens one. Nearly all lines have one cell, so that of
    // another system has one column, with the first such line, the third, over it.
    { good: 0, held: 10_001, reason: "line 2: found a quote that is never closed" },
    { good: 0, held: 9_999, reason: "it is longer than 200 characters" },
  ],
  [
    "quotes that open on every line",
    "canals.csv",
    ["session_id,canal,preparation\n", '"x\n'.repeat(100_000)],
    { good: 0, held: 100_000, reason: "line 2: found a quote that is never closed" },
    // Where none closes, quotes are letters: one column, with the second line over it.
    { good: 99_999, held: 0 },
  ],
  [
    "a million columns",
    "canals.csv",
    ["a".concat(",a".repeat(mega - 1)), "\n", "1".concat(",1".repeat(mega - 1)), "\n"],
    "its first row is no header",
    "line 1 should hold the names of the columns, and cannot be read",
  ],
  [
    "hundreds of thousands of columns",
    "canals.csv",
    ["a".concat(",a".repeat(399_999)), "\n", "1".concat(",1".repeat(399_999)), "\n"],
    "it has more than 2000 columns; is it a table of treatments?",
    "it has more than 2000 columns; is it a table of treatments?",
  ],
  [
    "100 MB in one JSON text",
    "canals.json",
    ['[{"session_id":"', ...mb(100, "x"), '"},{"session_id":"V-2","canal":"MB"}]'],
    { good: 0, held: 2, reason: "item is too long" },
    { good: 1, held: 1, reason: "item is too long" },
  ],
  [
    "a JSON object of many names",
    "canals.ndjson",
    [`{${Array.from({ length: 50_000 }, (_, n) => `"n${n}":1`).join()}}\n`],
    "it has more than 2000 columns",
    "it has more than 2000 columns",
  ],
])("%s", async (_, name, pieces, records, foreign) => {
  const path = join(folder, name);
  await writePieces(path, pieces);
  expectCame(await readApart(path), records, foreign);
});

test.each([
  ["a sheet that inflates without end", spaces(300)],
  ["tags within tags without end", "<row><c>".concat("<a>".repeat(10 * mega))],
  ["a cell of 50 MB", `<row><c t="inlineStr"><is><t>${"x".repeat(50 * mega)}</t></is></c></row>`],
  ["a tag of 50 MB", `<row><c ${"a".repeat(50 * mega)}="1"/></row>`],
])("a workbook with %s is refused in a sentence", async (_, sheetData) => {
  const path = join(folder, "canals.xlsx");
  await writeFile(path, workbookOf("canals", sheetData));
  const refused = "canals.xlsx: it cannot be read as a workbook (";
  expectCame(await readApart(path), refused, refused);
});

test("a workbook whose part is longer than it says is refused in a sentence", async () => {
  const book = workbookOf("canals", inlineRow(["session_id"]).concat("<row/>".repeat(mega)));
  // The sheet's length is told twice: before it and in the directory.
  const length = Buffer.alloc(4);
  length.writeUInt32LE(book.readUInt32LE(lengthAt(book)));
  const told = Buffer.alloc(4);
  told.writeUInt32LE(4000);
  for (let at = book.indexOf(length); at >= 0; at = book.indexOf(length)) told.copy(book, at);
  const path = join(folder, "canals.xlsx");
  await writeFile(path, book);
  const refused = "canals.xlsx: it cannot be read as a workbook (";
  expectCame(await readApart(path), refused, refused);
});

test("an honest workbook of 20 MB unpacked is read", async () => {
  const row = inlineRow(["V-1", "MB", "rotary"]);
  const rows = Math.ceil((20 * mega) / row.length);
  const data = [inlineRow(["session_id", "canal", "preparation"])];
  for (let n = 0; n < rows; n += 1) data.push(row.replace("V-1", `V-${(n * 7919) % 99_991}`));
  const path = join(folder, "canals.xlsx");
  await writeFile(path, workbookOf("canals", data.join("")));
  expectCame(await readApart(path), { good: rows, held: 0 }, { good: rows, held: 0 });
});

test("a part of 400 MB that packs to a twentieth may be opened, and is unpacked piece by piece", async () => {
  const path = join(folder, "big.xlsx");
  const line = Buffer.from(`${Array.from({ length: 40 }, (_, n) => (n * 7919) % 9973).join()}\n`);
  const plain = Buffer.alloc(400 * mega);
  // The same lines come again, but too far apart to be packed as one.
  for (let at = 0, n = 0; at + line.length + 12 < plain.length; at += line.length + 12, n += 1) {
    line.copy(plain, at);
    plain.write(String((n * 2_654_435_761) % 1e12).padStart(12), at + line.length);
  }
  await writeFile(path, writeZip({ part: plain }));
  const parts = await zipEntries(path);
  let bytes = 0;
  for await (const piece of await parts.open("part")) bytes += (piece as Buffer).length;
  parts.close();
  expect(bytes).toBe(400 * mega);
});

type Came = Record<string, { records: CameOf; foreign: CameOf }>;

async function readApart(path: string): Promise<Came[string]> {
  const tsx = join(process.cwd(), "node_modules/.bin/tsx");
  const script = ["--tsconfig", "lib/command/tsconfig.json", "tests/intake/read-apart.ts", path];
  const { stdout } = await run(tsx, script, {
    env: { ...process.env, NODE_OPTIONS: `--max-old-space-size=${memoryMb}` },
  });
  const [came] = Object.values(JSON.parse(stdout) as Came);
  if (!came) throw new Error("nothing came of it");
  return came;
}

function expectCame(came: Came[string], records: unknown, foreign: unknown): void {
  expect({ records: came.records, foreign: came.foreign }).toEqual({
    records: expected(records),
    foreign: expected(foreign),
  });
}

function expected(what: unknown): unknown {
  if (typeof what === "string") return expect.stringContaining(what);
  const { reason, ...counts } = what as { reason?: string };
  return { ...counts, ...(reason ? { reason: expect.stringContaining(reason) } : {}) };
}

async function writePieces(path: string, pieces: readonly string[]): Promise<void> {
  const out = createWriteStream(path);
  for (const piece of pieces) if (!out.write(piece)) await once(out, "drain");
  out.end();
  await once(out, "finish");
}

/** So many millions of characters, in pieces. */
function mb(millions: number, text: string): string[] {
  const piece = text.repeat(Math.floor(mega / text.length));
  return Array.from({ length: millions }, () => piece);
}

function spaces(millions: number): string {
  return " ".repeat(millions * mega);
}

/** Where the local header of the sheet has its length unpacked (PKWARE APPNOTE 4.3.7). */
function lengthAt(book: Buffer): number {
  return book.indexOf("xl/worksheets/sheet1.xml") - 30 + 22;
}
