import { count } from "../quantity";
import type { FileDraft } from "./draft";

/** How a file is written and how sure that is: "semicolons, Windows-1252, column names in line 1, 16 900 rows: certain". */
export function fileWords(
  file: FileDraft,
  rows: number,
  sure: readonly ("certain" | "likely")[],
): string {
  const parts = [layoutWords(file), `${count(rows)} ${rows === 1 ? "row" : "rows"}`];
  const all = sure.every((one) => one === "certain") ? "certain" : "likely; look at it first";
  return `${parts.join(", ")}: ${all}`;
}

/** How a file is written: "semicolons, Windows-1252, column names in line 1". */
export function layoutWords(file: FileDraft): string {
  return how(file).join(", ");
}

function how(file: FileDraft): string[] {
  const header = `column names in line ${file.headerLine}`;
  if (file.kind === "workbook")
    return [file.sheet ? `workbook, sheet “${file.sheet}”` : "workbook", header];
  if (file.kind !== "separated") return [file.kind === "json" ? "JSON" : "JSON, one a line"];
  return [
    separatorWords[file.separator] ?? `“${file.separator}” between cells`,
    encodingWords[file.encoding] ?? file.encoding,
    header,
  ];
}

export const separatorWords: Readonly<Record<string, string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "upright strokes",
};

export const encodingWords: Readonly<Record<string, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16",
  "utf-16be": "UTF-16, big end first",
  "windows-1252": "Windows-1252",
};
