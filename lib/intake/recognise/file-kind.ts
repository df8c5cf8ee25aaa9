import { open } from "node:fs/promises";
import { extname } from "node:path";
import type { FileLayout } from "../mapping/file-layout";
import { UnreadableFile } from "../unreadable-file";

/** Beginnings of files that hold no table, whatever their name says. */
const others: readonly [string, string][] = [
  ["%PDF", "a PDF document"],
  ["\x89PNG", "a picture"],
  ["\xff\xd8\xff", "a picture"],
  ["GIF8", "a picture"],
  ["\x7fELF", "a program"],
  ["MZ", "a program"],
  ["{\\rtf", "a text document"],
  ["<?xml", "an XML file"],
  ["<!DOC", "a web page"],
  ["<html", "a web page"],
  ["\xd0\xcf\x11\xe0", "a workbook of the old kind; save it as .xlsx"],
  ["\x1f\x8b", "a compressed file; unpack it first"],
];

/**
 * What kind of file it is, by how it begins rather than by its name.
 *
 * @throws UnreadableFile where it holds no table
 */
export async function fileKind(path: string, name: string): Promise<FileLayout["kind"]> {
  const start = await beginning(path, 4096);
  if (start.length === 0)
    throw new UnreadableFile(name, "it is empty; export it again, or leave it out.");
  const text = start.toString("latin1");
  const other = others.find(([mark]) => text.startsWith(mark));
  if (other) throw new UnreadableFile(name, `it is ${other[1]}; no table can be read from it.`);
  if (text.startsWith("PK")) {
    if (extname(name).toLowerCase() === ".xlsx") return "workbook";
    throw new UnreadableFile(name, "it is a packed file (ZIP); unpack it first.");
  }
  if (extname(name).toLowerCase() === ".xlsx")
    throw new UnreadableFile(name, "it is no workbook, whatever its name says.");
  const plain = start
    .toString("utf8")
    .replace(/^\ufeff/, "")
    .trimStart();
  if (plain.startsWith("[")) return "json";
  return plain.startsWith("{") ? "json-lines" : "separated";
}

export async function beginning(path: string, bytes: number): Promise<Buffer> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(bytes), 0, bytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}
