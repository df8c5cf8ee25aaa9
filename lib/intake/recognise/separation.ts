import { Readable } from "node:stream";
import { csvRows } from "../csv-rows";
import type { Encoding, FileLayout } from "../mapping/file-layout";
import { beginning } from "./file-kind";
import type { Reading } from "./recognised";

/** So much of a file tells how its lines are cut. */
const lookedAt = 512 * 1024;

const separators = [
  [",", "commas"],
  [";", "semicolons"],
  ["\t", "tabs"],
  ["|", "bars"],
] as const;

type Cut = {
  separator: string;
  words: string;
  rows: { line: number; cells: readonly string[] }[];
  count: number;
  share: number;
};

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
  const wanted = separators.filter(([mark]) => !asked.separator || mark === asked.separator);
  const others =
    asked.separator && wanted.length === 0
      ? [[asked.separator, `"${asked.separator}"`] as const]
      : wanted;
  const cuts: Cut[] = [];
  for (const [separator, words] of others) cuts.push(await cutBy(text, separator, words, quote));
  cuts.sort((one, other) => other.share - one.share || other.count - one.count);
  const best = cuts[0] as Cut;
  const next = cuts[1];
  const { line, sure: headerSure, why } = headerOf(best);
  const percent = Math.floor(best.share * 100);
  return {
    layout: { separator: best.separator, quote, headerLine: asked.headerLine ?? line },
    readings: [
      {
        about: "separator",
        sure: best.share > 0.98 && (next?.share ?? 0) < 0.9 ? "certain" : "likely",
        why:
          best.count === 1
            ? "No line is parted by commas, semicolons, tabs or bars: there is one column."
            : `Parted by ${best.words}, ${percent} of 100 lines have ${best.count} cells.`,
      },
      { about: "headerLine", sure: headerSure, why },
    ],
  };
}

async function sample(path: string, encoding: Encoding): Promise<string> {
  const bytes = await beginning(path, lookedAt);
  const text = new TextDecoder(encoding).decode(bytes);
  if (bytes.length < lookedAt) return text;
  // The last line may be cut off.
  return text.slice(0, text.lastIndexOf("\n") + 1 || undefined);
}

function quoteOf(text: string): '"' | "'" {
  const single = text.match(/(^|[,;\t|])'[^'\n]*'(?=[,;\t|\r\n]|$)/gm)?.length ?? 0;
  const double = text.match(/(^|[,;\t|])"/gm)?.length ?? 0;
  return single > double && single > 2 ? "'" : '"';
}

async function cutBy(text: string, separator: string, words: string, quote: string): Promise<Cut> {
  const source = Readable.from([Buffer.from(text)]);
  const rows: Cut["rows"] = [];
  for await (const some of csvRows(source, { encoding: "utf-8", separator, quote }))
    for (const { line, cells, broken } of some)
      if (!broken && cells.some((cell) => cell.trim() !== "")) rows.push({ line, cells });
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [count, lines] = [...counts].sort(
    (one, other) => other[1] - one[1] || other[0] - one[0],
  )[0] ?? [1, 0];
  // A cut that leaves one cell a line is always steady and says nothing.
  const share = count > 1 && rows.length > 0 ? lines / rows.length : 0;
  return { separator, words, rows, count, share };
}

/** The first line that has all cells, each a text of its own that is neither number nor date. */
function headerOf({ rows, count }: Cut): { line: number; sure: Reading["sure"]; why: string } {
  const looksRight = (cells: readonly string[]) => {
    const names = cells.map((cell) => cell.trim()).filter(Boolean);
    return (
      cells.length === count &&
      names.length >= Math.ceil(count * 0.8) &&
      new Set(names).size === names.length &&
      names.every((name) => !/^[\d\s.,:/+-]+$/.test(name))
    );
  };
  const found = rows.find(({ cells }) => looksRight(cells));
  if (!found) {
    const line = rows.find(({ cells }) => cells.length === count)?.line ?? 1;
    return {
      line,
      sure: "likely",
      why: `No line looks like the names of columns; line ${line} is taken.`,
    };
  }
  const first = found === rows[0];
  return {
    line: found.line,
    sure: first ? "certain" : "likely",
    why: first
      ? "The first line holds a different name in each cell."
      : `Line ${found.line} is the first with a different name in each of its ${count} cells; what stands above is passed over.`,
  };
}
