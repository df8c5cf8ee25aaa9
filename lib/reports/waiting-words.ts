import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import type { Reading } from "@/lib/intake/recognise/recognised";

const separators: Readonly<Record<string, string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "bars",
};

/** A part of how a file is written, with what it was found to be: "Encoding: windows-1252". */
export function whatOf(about: Reading["about"], file: FileLayout): string {
  switch (about) {
    case "kind":
      return `Kind: ${file.kind}`;
    case "encoding":
      return `Encoding: ${file.encoding}`;
    case "separator":
      return `Parted by: ${separators[file.separator] ?? file.separator}`;
    case "headerLine":
      return `Names of the columns: line ${file.headerLine}`;
    case "decimal":
      return `Decimals: ${file.decimal === "," ? "after a comma" : "after a point"}`;
    case "sheet":
      return `Sheet: ${file.sheet ?? "the first"}`;
  }
}
