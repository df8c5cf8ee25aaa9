import { count } from "./quantity";

/** A record file that was written; its path is below the folder that was named. */
export type WrittenFile = {
  readonly path: string;
  readonly rows: number;
  readonly sha256: string;
};

type WrittenFolder = {
  readonly folder: string;
  readonly zone: string;
  readonly practices: readonly string[];
  readonly files: readonly WrittenFile[];
  readonly left: number;
};

/** What lies beside the files: what they are, and how they are brought in elsewhere. */
export function wayOutReadMe(folders: readonly WrittenFolder[], version: string): string {
  const left = folders.reduce((sum, one) => sum + one.left, 0);
  const lines = [
    "Treatment records in the record format: CSV files (RFC 4180, UTF-8), one a table.",
    "Patients are pseudonyms, which join the visits of one patient of a practice as before; moments are in UTC; teeth are written",
    "by ISO 3950.",
    "Rows that are held here stand last in each file as they were read, and will be held again. Where their cells alone would not",
    'say why, a "? " stands before one of them, or the row has a cell too many.',
    "Exceptions that were entered on a page are among them, without notes and without who wrote them.",
    "Rows that were let go, old versions of corrected rows, protocols, targets, people's accounts and notes are not among them.",
    ...(left > 0
      ? [
          `${count(left)} held ${left === 1 ? "row is" : "rows are"} not among them: nothing of them was kept, as any cell might have been a patient.`,
        ]
      : []),
    "",
    "To bring them in elsewhere, a folder at a time and in this order, as each has its own time zone:",
    ...folders.map(
      ({ folder, zone, practices }) =>
        `  npm run canal-audit -- import ${folder} --zone ${zone}    (${practices.join(", ")})`,
    ),
    "The figures are the same where the same protocol is in force.",
    "",
    `Written by version ${version}. Rows and SHA-256 of each file:`,
    ...folders.flatMap(({ files }) =>
      files.map((file) => `  ${file.path}  ${file.rows} rows  ${file.sha256}`),
    ),
    "",
  ];
  return lines.join("\r\n");
}
