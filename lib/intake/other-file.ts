import { open } from "node:fs/promises";
import { UnreadableFile } from "./unreadable-file";

/** Bytes, as hexadecimal digits or as text, with which such a file begins, or which it has so far from its beginning. */
type Mark = { readonly hex?: string; readonly text?: string; readonly at?: number };

/** Files that hold no table, by their formats' published descriptions. */
const others: readonly { readonly what: string; readonly marks: readonly Mark[] }[] = [
  { what: "it is a PDF document", marks: [{ text: "%PDF-" }] },
  {
    what: "it is a picture",
    marks: [
      { hex: "89504e470d0a1a0a" },
      { hex: "ffd8ff" },
      { text: "GIF87a" },
      { text: "GIF89a" },
      { text: "WEBP", at: 8 },
      { hex: "49492a00" },
      { hex: "4d4d002a" },
    ],
  },
  { what: "it is a program", marks: [{ hex: "7f454c46" }] },
  {
    what: "it is a sound or a film",
    marks: [{ text: "ftyp", at: 4 }, { text: "WAVE", at: 8 }, { text: "OggS" }],
  },
  { what: "it is a text document", marks: [{ text: "{\\rtf" }] },
  {
    what: "it is a web page",
    marks: ["<!DOCTYPE", "<!doctype", "<html", "<HTML"].map((text) => ({ text })),
  },
  { what: "it is an XML file", marks: [{ text: "<?xml" }] },
  { what: "it is a database", marks: [{ text: "SQLite format 3" }] },
  {
    what: "it is a workbook or document of the old kind; save it as .xlsx",
    marks: [{ hex: "d0cf11e0" }],
  },
  {
    what: "it is a packed file; unpack it first",
    marks: [{ hex: "1f8b" }, { hex: "377abcaf271c" }, { text: "Rar!" }],
  },
];

/**
 * Refuses what is another file altogether, whatever its name says, by how it begins.
 *
 * @throws UnreadableFile in one sentence that says what it is
 */
export function refuseOtherFile(start: Buffer, name: string): void {
  const what =
    others.find(({ marks }) => marks.some((mark) => has(start, mark)))?.what ??
    // A table's first column may be called MZ, but it has no empty bytes.
    (has(start, { text: "MZ" }) && start.subarray(0, 100).includes(0) ? "it is a program" : "");
  if (what) throw new UnreadableFile(name, `${what}; no table can be read from it.`);
}

/** Does it begin as a ZIP file does, which a workbook is, too (PKWARE APPNOTE 4.3.7)? */
export function isPacked(start: Buffer): boolean {
  return has(start, { hex: "504b0304" }) || has(start, { hex: "504b0506" });
}

function has(start: Buffer, { hex, text = "", at = 0 }: Mark): boolean {
  const bytes = hex ? Buffer.from(hex, "hex") : Buffer.from(text);
  const from = at === 0 && start.subarray(0, 3).toString("hex") === "efbbbf" ? 3 : at;
  return start.subarray(from, from + bytes.length).equals(bytes);
}

/** The first bytes of a file. */
export async function beginning(path: string, bytes: number): Promise<Buffer> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(bytes), 0, bytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}
