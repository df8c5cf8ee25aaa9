import type { Column, Value, Values } from "@/lib/records/column";
import type { Place, Reason } from "@/lib/records/reason";
import { type TableName, tables } from "@/lib/records/tables";
import { type ToothNotation, toothByIso3950, toothNotations } from "@/lib/records/tooth";
import { checkCell, isProblem, type Problem } from "./check-cell";
import type { RawRow } from "./raw-row";
import { rowProblems } from "./row-rules";
import type { Context, GoodRow, HeldRow } from "./sheet";

type Cells = Readonly<Record<string, string>>;
type Found = { readonly column?: string } & Problem;

/** Checks a row against the columns of its table and the rules between them; every problem of the row is told. */
export function checkRow(table: TableName, row: RawRow, file: string, context: Context): GoodRow | HeldRow {
  const place = { file, line: row.line };
  // Where the cells cannot be told apart nothing of the row is kept: any of them might be the patient.
  if (!row.cells) return heldRow(table, place, {}, [row.trouble], {});
  const values: Record<string, Value | undefined> = {};
  const found: Found[] = [];
  const columns = tables[table].columns;
  const practice = row.cells.practice?.trim() || undefined;
  const cellContext = { zone: context.zoneOf(practice), now: context.now };
  for (const column of columns) {
    const text = (row.cells[column.name] ?? "").trim();
    if (text === "") {
      if (column.required) found.push({ column: column.name, found: "", remedy: `it is required: ${lowered(column.says)}` });
      continue;
    }
    const checked = column.type === "tooth" ? tooth(text, row.cells) : checkCell(column, text, cellContext);
    if (isProblem(checked)) found.push({ column: column.name, ...checked, ...(column.type === "patient" ? { found: "(not shown)" } : {}) });
    else values[column.name] = checked;
  }
  hidePatient(columns, values, row.cells, context);
  found.push(...rowProblems(table, values, row.cells));
  if (found.length === 0) return { verdict: "good", line: row.line, values };
  return heldRow(table, place, row.cells, found, values, context);
}

function tooth(text: string, cells: Cells): Value | Problem {
  const notation = (cells.tooth_notation ?? "").trim().toLowerCase();
  const fitting = toothNotations.filter((one) => toothByIso3950(text, one) !== undefined);
  if (!toothNotations.includes(notation as ToothNotation)) {
    const why = fitting.length > 1 ? `it is a tooth in ${fitting.join(" and in ")}` : "its notation is not known";
    return { found: text, remedy: `${why}; write fdi, universal or palmer in tooth_notation` };
  }
  const iso = toothByIso3950(text, notation as ToothNotation);
  if (iso) return iso;
  return { found: text, remedy: `there is no such tooth in ${notation} notation; ${examples[notation as ToothNotation]}` };
}

const examples: Record<ToothNotation, string> = {
  fdi: "write two digits as 26, or 54 for a primary tooth",
  universal: "write 1 to 32, or A to T for a primary tooth",
  palmer: "write the quadrant and the position as UR6, or URA for a primary tooth",
};

/** The patient's reference goes no further than here: what is kept is its keyed hash. */
function hidePatient(columns: readonly Column[], values: Record<string, Value | undefined>, cells: Cells, context: Context) {
  const column = columns.find((one) => one.type === "patient");
  if (!column || values[column.name] === undefined) return;
  values[column.name] = context.pseudonym((cells.practice ?? "").trim(), String(values[column.name]));
}

function heldRow(table: TableName, place: Place, cells: Cells, found: readonly Found[], values: Values, context?: Context): HeldRow {
  const raw: Record<string, string> = {};
  for (const column of tables[table].columns) {
    const text = (cells[column.name] ?? "").trim();
    if (text === "") continue;
    raw[column.name] = column.type === "patient" ? String(values[column.name] ?? context?.pseudonym((cells.practice ?? "").trim(), text) ?? "") : text;
  }
  const keys = tables[table].columns.filter((column) => column.key && column.name !== "practice");
  const held = {
    verdict: "held" as const,
    line: place.line,
    key: keys.map((column) => raw[column.name] ?? "").filter(Boolean).join(" "),
    raw,
    reasons: found.map((one) => reasonOf(place, one)),
  };
  const known = (name: string) => (typeof values[name] === "string" ? { [name]: values[name] } : {});
  const wholeTooth = keys.some((column) => column.name === "canal") && cells.canal?.trim() === "" ? { canal: "" } : {};
  return { ...held, ...known("practice"), ...known("session_id"), ...wholeTooth, ...known("canal") };
}

function reasonOf(place: Place, { column, found, remedy }: Found): Reason {
  const shown = found.length > 60 ? `${found.slice(0, 60)}…` : found;
  const where = `${place.file}, line ${place.line}${column ? `, ${column}` : ""}`;
  const what = found === "" ? "nothing there" : `found "${shown}"`;
  return { ...(column ? { column } : {}), found: shown, remedy, sentence: `${where}: ${what}; ${remedy}${/[.?]$/.test(remedy) ? "" : "."}` };
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, "");
}
