import { createReadStream } from "node:fs";
import { Readable } from "node:stream";
import { csvRows } from "../csv-rows";
import type { Encoding, FileLayout } from "../mapping/file-layout";
import { beginning } from "../other-file";
import { type CutRow, headerLineOf } from "./header-line";
import type { Reading } from "./recognised";

/** So much of a file is cut in every way; what may be meant by it is then looked at in all of it. */
const lookedAt = 512 * 1024;
const rowsKept = 100;

const separators = [
  [",", "commas"],
  [";", "semicolons"],
  ["\t", "tabs"],
  ["|", "bars"],
] as const;

type Way = { readonly separator: string; readonly words: string };
type Cut = Way & { first: CutRow[]; count: number; share: number };

/** Separator, quote and header line of separated text: the separator under which the most lines have the same number of cells. */
export async function separationOf(
  path: string,
  encoding: Encoding,
  asked: Partial<FileLayout>,
): Promise<{
  layout: Pick<FileLayout, "separator" | "quote" | "headerLine">;
  readings: Reading[];
}> {
  const text = await sample(path, encoding);
  const quote = asked.quote ?? quoteOf(text);
  const all: Way[] = separators.map(([separator, words]) => ({ separator, words }));
  const ways = asked.separator
    ? [{ separator: asked.separator, words: `"${asked.separator}"` }]
    : all;
  const [best, next] = await cutsOf(path, encoding, quote, ways, text);
  if (!best) throw new Error("There is no way to cut the file.");
  const { line, ...header } = headerLineOf(best.first, best.count);
  return {
    layout: { separator: best.separator, quote, headerLine: asked.headerLine ?? line },
    readings: [separatorReading(best, next), header],
  };
}

/** The ways in which the file may be cut, best first: by its beginning, and by all of it where that may mean two. */
async function cutsOf(
  path: string,
  encoding: Encoding,
  quote: string,
  ways: readonly Way[],
  text: string,
): Promise<Cut[]> {
  const bySample: Cut[] = [];
  for (const way of ways) {
    const source = Readable.from([Buffer.from(text)]);
    bySample.push(await cutBy(source, way, "utf-8", quote));
  }
  const possible = bySample.filter(({ share }) => share > 0.5);
  if (possible.length < 2 || text.length < lookedAt / 4) return bySample.sort(better);
  const byAll: Cut[] = [];
  for (const way of possible) byAll.push(await cutBy(createReadStream(path), way, encoding, quote));
  return byAll.sort(better);
}

const better = (one: Cut, other: Cut) => other.share - one.share || other.count - one.count;

function separatorReading(best: Cut, next: Cut | undefined): Reading {
  const percent = Math.floor(best.share * 100);
  return {
    about: "separator",
    sure: best.share > 0.98 && (next?.share ?? 0) < 0.9 ? "certain" : "likely",
    why:
      best.count === 1
        ? "No line is parted by commas, semicolons, tabs or bars: there is one column."
        : `Parted by ${best.words}, ${percent} of 100 lines have ${best.count} cells.`,
  };
}

async function sample(path: string, encoding: Encoding): Promise<string> {
  const bytes = await beginning(path, lookedAt);
  const text = new TextDecoder(encoding).decode(bytes);
  if (bytes.length < lookedAt) return text;
  // The last line may be cut off.
  return text.slice(0, text.lastIndexOf("\n") + 1 || undefined);
}

/** What is put round cells: where quotes open and none of them closes, they are letters, as the inch of 5". */
function quoteOf(text: string): FileLayout["quote"] {
  const count = (shape: RegExp) => text.match(shape)?.length ?? 0;
  const single = count(/(^|[,;\t|])'[^'\n]*'(?=[,;\t|\r\n]|$)/gm);
  const double = count(/(^|[,;\t|])"/gm);
  if (single > double && single > 2) return "'";
  const closed = double > 2 ? count(/(^|[,;\t|\r\n])"[^"]*("")*[^"]*"(?=[,;\t|\r\n]|$)/g) : 1;
  return closed === 0 ? "" : '"';
}

async function cutBy(source: Readable, way: Way, encoding: Encoding, quote: string): Promise<Cut> {
  const first: CutRow[] = [];
  const counts = new Map<number, number>();
  let rows = 0;
  for await (const some of csvRows(source, { ...way, encoding, quote }))
    for (const { line, cells, broken } of some) {
      if (broken || cells.every((cell) => cell.trim() === "")) continue;
      rows += 1;
      counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
      if (first.length < rowsKept) first.push({ line, cells });
    }
  const [count, lines] = [...counts].sort(
    (one, other) => other[1] - one[1] || other[0] - one[0],
  )[0] ?? [1, 0];
  // A cut that leaves one cell a line is always steady and says nothing.
  const share = count > 1 && rows > 0 ? lines / rows : 0;
  return { ...way, first, count, share };
}
