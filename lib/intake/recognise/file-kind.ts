import { extname } from "node:path";
import type { FileLayout } from "../mapping/file-layout";
import { beginning, isPacked, refuseOtherFile } from "../other-file";
import { UnreadableFile } from "../unreadable-file";
import { zipEntries } from "../workbook/zip-entries";

/**
 * What kind of file it is, by how it begins rather than by its name.
 *
 * @throws UnreadableFile where it holds no table
 */
export async function fileKind(path: string, name: string): Promise<FileLayout["kind"]> {
  const start = await beginning(path, 4096);
  if (start.length === 0)
    throw new UnreadableFile(name, "it is empty; export it again, or leave it out.");
  refuseOtherFile(start, name);
  const calledWorkbook = extname(name).toLowerCase() === ".xlsx";
  if (isPacked(start)) {
    if (calledWorkbook) return "workbook";
    throw new UnreadableFile(
      name,
      (await isWorkbook(path))
        ? "it is a workbook; give it a name that ends in .xlsx."
        : "it is a packed file (ZIP); unpack it first.",
    );
  }
  if (calledWorkbook) throw new UnreadableFile(name, "it is no workbook, whatever its name says.");
  const kind = ofText(start.toString("utf8"));
  if (kind === "json-lines" && goesOn(start.toString("utf8")))
    throw new UnreadableFile(
      name,
      "it is one JSON object over many lines; write its rows as one array, or one object a line.",
    );
  if (kind === "separated" && start.includes(0) && isWideJson(start))
    throw new UnreadableFile(
      name,
      "it is JSON in UTF-16; JSON is written in UTF-8, so save it again.",
    );
  return kind;
}

/** A title in brackets, as [Export], is no JSON: an array begins with an item, an object with a name in quotes. */
function ofText(text: string): FileLayout["kind"] {
  const plain = text.replace(/^\ufeff/, "").trimStart();
  if (/^\[\s*([[{\]"\d-]|true|false|null|$)/.test(plain)) return "json";
  return /^\{\s*(["}]|$)/.test(plain) ? "json-lines" : "separated";
}

/** Is the object that begins in the first line still open at its end? */
function goesOn(text: string): boolean {
  const first = text.trimStart().split(/\r?\n/);
  return first.length > 1 && /[{[,]\s*$/.test(first[0] ?? "");
}

function isWideJson(start: Buffer): boolean {
  return (["utf-16le", "utf-16be"] as const).some(
    (encoding) => ofText(new TextDecoder(encoding).decode(start)) !== "separated",
  );
}

async function isWorkbook(path: string): Promise<boolean> {
  try {
    const parts = await zipEntries(path);
    parts.close();
    return parts.names.includes("xl/workbook.xml");
  } catch {
    return false;
  }
}
