import type { Values } from "@/lib/records/column";
import type { Place, Reason } from "@/lib/records/reason";
import { type TableName, tables } from "@/lib/records/tables";
import { matchCells } from "./mend/match-cells";
import type { Patient } from "./patient-cell";
import type { Trouble } from "./raw-row";
import type { HeldRow, Match } from "./sheet";

export type Cells = Readonly<Record<string, string>>;
export type Found = Trouble;

/**
 * A held row with its reasons in words.
 *
 * @param values the columns that were right; they tell the practice, visit and canal it belongs to.
 * @param match what finds the visit of a row that names none; it is kept beside the cells, as `visit.at`.
 */
export function heldRow(
  table: TableName,
  place: Place,
  cells: Cells,
  found: readonly Found[],
  values: Values,
  patient?: Patient,
  match?: Match,
): HeldRow {
  const { columns } = tables[table];
  const hidden = (column: string | undefined, text: string) =>
    printable(patient ? patient.hidden(column, text) : text);
  const raw: Record<string, string> = {};
  for (const { name } of columns) {
    const text = cells[name]?.trim();
    if (text) raw[name] = hidden(name, text);
  }
  if (match) Object.assign(raw, matchCells(match));
  const keys = columns.filter((column) => column.key && column.name !== "practice");
  const known = (name: string) =>
    typeof values[name] === "string" ? { [name]: hidden(name, values[name]) } : {};
  // A row whose cells could not be told has no empty canal: it has none that is known.
  const wholeTooth =
    keys.some(({ name }) => name === "canal") && raw.session_id && !raw.canal ? { canal: "" } : {};
  return {
    verdict: "held",
    line: place.line,
    key: keys
      .map(({ name }) => raw[name] ?? "")
      .filter(Boolean)
      .join(" "),
    ...known("practice"),
    ...known("session_id"),
    ...wholeTooth,
    ...known("canal"),
    raw,
    reasons: found.map((one) => reasonOf(place, { ...one, found: reasonText(one, hidden) })),
  };
}

function reasonText(
  { column, found }: Found,
  hidden: (column: string | undefined, text: string) => string,
): string {
  return column === "patient" && found !== "" ? "(not shown)" : hidden(undefined, found);
}

function reasonOf(place: Place, { column, found, remedy }: Found): Reason {
  const shown = shortened(found.replace(/\p{Cc}+/gu, " "));
  const where = `${place.file}, line ${place.line}${column ? `, ${column}` : ""}`;
  const what = found === "" ? "nothing there" : column ? `found "${shown}"` : `found ${shown}`;
  const sentence = `${where}: ${what}; ${remedy}${/[.?]$/.test(remedy) ? "" : "."}`;
  return { ...(column ? { column } : {}), found: shown, remedy, sentence };
}

function shortened(text: string): string {
  const marks = text.length > 60 ? Array.from(text.slice(0, 130)) : [];
  return marks.length > 60 ? `${marks.slice(0, 60).join("")}…` : text;
}

/** PostgreSQL takes neither NUL nor half of a surrogate pair. */
function printable(text: string): string {
  return text.replace(/\0|\p{Surrogate}/gu, "\ufffd");
}
