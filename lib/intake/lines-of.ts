import type { Readable } from "node:stream";
import type { Encoding } from "./mapping/file-layout";

export type Line = { readonly number: number; readonly text: string; readonly tooLong: boolean };

/** No row of the record format is longer, in characters. */
export const longestLine = 1_000_000;

/**
 * The lines of a text file, those of one piece of it at a time, whatever ends them (LF, CR LF or CR) and without a byte
 * order mark. Of a line that is too long only the beginning is kept, so that memory stays bounded.
 */
export async function* linesOf(
  source: Readable,
  encoding: Encoding = "utf-8",
): AsyncGenerator<Line[]> {
  let number = 0;
  let rest = "";
  let tooLong = false;
  let afterReturn = false;
  const line = (text: string): Line => {
    number += 1;
    const whole = rest === "" ? text : rest + text;
    const made = { number, text: whole, tooLong: tooLong || whole.length > longestLine };
    rest = "";
    tooLong = false;
    return made;
  };
  for await (const piece of textOf(source, encoding)) {
    if (piece === "") continue;
    let chunk = piece;
    if (number === 0 && rest === "") chunk = chunk.replace(/^\ufeff/, "");
    // A CR at the end of a piece was an end of line; the LF after it is the same one.
    if (afterReturn && chunk.startsWith("\n")) chunk = chunk.slice(1);
    afterReturn = chunk.endsWith("\r");
    const texts = chunk.includes("\r") ? chunk.split(/\r\n|\n|\r/) : chunk.split("\n");
    const open = texts.pop() ?? "";
    yield texts.map(line);
    if (rest.length + open.length > longestLine) tooLong = true;
    else rest += open;
  }
  if (rest !== "" || tooLong) yield [line("")];
}

/** The text of a file, a piece at a time; what its encoding does not have becomes U+FFFD. */
async function* textOf(source: Readable, encoding: Encoding): AsyncGenerator<string> {
  if (encoding === "utf-8") {
    source.setEncoding("utf8");
    yield* source as AsyncIterable<string>;
    return;
  }
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  for await (const piece of source) yield decoder.decode(piece as Buffer, { stream: true });
  yield decoder.decode();
}
