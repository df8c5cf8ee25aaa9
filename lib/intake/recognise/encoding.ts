import { createReadStream } from "node:fs";
import type { Encoding } from "../mapping/file-layout";
import { beginning } from "../other-file";
import { UnreadableFile } from "../unreadable-file";
import type { Reading } from "./recognised";

/**
 * The encoding of a text file, by all its bytes.
 *
 * @throws UnreadableFile where it is no text
 */
export async function encodingOf(
  path: string,
  name: string,
): Promise<{ encoding: Encoding; reading: Reading }> {
  const told = (encoding: Encoding, sure: Reading["sure"], why: string) => ({
    encoding,
    reading: { about: "encoding", sure, why } as const,
  });
  const start = await beginning(path, 65_536);
  if (start[0] === 0xff && start[1] === 0xfe)
    return told("utf-16le", "certain", "It begins with the mark of UTF-16.");
  if (start[0] === 0xfe && start[1] === 0xff)
    return told("utf-16be", "certain", "It begins with the mark of UTF-16.");
  const wide = wideOf(start);
  if (wide) return told(wide, "likely", "Every other byte is empty, as in UTF-16.");
  // One in a cell costs its row; many are no text.
  if (nulsIn(start) > start.length * mostNuls)
    throw new UnreadableFile(
      name,
      "it is no text, as it has empty bytes in it; export it again as CSV.",
    );
  const { valid, plain } = await utf8(path);
  if (plain)
    return told("utf-8", "certain", "It has no letters but those that all encodings share.");
  if (valid) return told("utf-8", "certain", "All its letters are right in UTF-8.");
  return told(
    "windows-1252",
    "likely",
    "It has letters that UTF-8 does not allow, as older Western systems write them.",
  );
}

const mostNuls = 0.005;

function nulsIn(start: Buffer): number {
  let nuls = 0;
  for (const byte of start) if (byte === 0) nuls += 1;
  return nuls;
}

/** UTF-16 without its mark: nearly all of one half of the bytes are NUL, as long as the text is Western. */
function wideOf(start: Buffer): Encoding | undefined {
  const half = Math.floor(start.length / 2);
  if (half < 4) return undefined;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < half * 2; at += 1) if (start[at] === 0) at % 2 === 0 ? even++ : odd++;
  const few = 0.02 * half;
  if (odd > 0.7 * half && even <= few) return "utf-16le";
  return even > 0.7 * half && odd <= few ? "utf-16be" : undefined;
}

async function utf8(path: string): Promise<{ valid: boolean; plain: boolean }> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let plain = true;
  try {
    for await (const piece of createReadStream(path)) {
      const bytes = piece as Buffer;
      if (plain && decoder.decode(bytes, { stream: true }).length === bytes.length) continue;
      if (plain) plain = false;
      else decoder.decode(bytes, { stream: true });
    }
    decoder.decode();
    return { valid: true, plain };
  } catch {
    return { valid: false, plain: false };
  }
}
