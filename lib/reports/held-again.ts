import { checkRow } from "@/lib/intake/check-row";
import type { Context } from "@/lib/intake/sheet";
import type { Column, Value } from "@/lib/records/column";
import { tables } from "@/lib/records/tables";
import type { HeldToGo } from "@/lib/store/way-out/held-to-go";

/** The cells of a held row so that it is held again elsewhere; `ragged` with a cell too many. */
export type HeldAgain = {
  readonly cells: Readonly<Record<string, string>>;
  readonly ragged: boolean;
};

/**
 * A held row as it was read. What was held for a reason that the cells alone do not bear (a time that was to come, a
 * number in another notation, a row cut wrongly, a sender of another practice) gets a mark before the cell in question, so
 * that it is not accepted unseen. Undefined where nothing of the row was kept.
 *
 * @param zone IANA zone by which the row is read elsewhere
 * @param some only some practices go: which visit a row means may look settled elsewhere and is not
 */
export function heldAgain(row: HeldToGo, zone: string, some: boolean): HeldAgain | undefined {
  const unsettled =
    row.kind === "outside-reach" ||
    (row.kind === "several-practices" && some) ||
    row.values?.match != null;
  if (row.values && !unsettled)
    return { cells: writtenCells(row.table, row.values), ragged: false };
  const cells = row.values ? writtenCells(row.table, row.values) : row.raw;
  if (Object.keys(cells).length === 0) return undefined;
  if (isHeldThere(row, cells, zone)) return { cells, ragged: false };
  for (const column of toMark(row, cells)) {
    const marked = { ...cells, [column]: `? ${cells[column]}` };
    if (isHeldThere(row, marked, zone)) return { cells: marked, ragged: false };
  }
  return { cells, ragged: true };
}

/** Do the checks hold these cells and find the same visit and canal. */
function isHeldThere(row: HeldToGo, cells: HeldAgain["cells"], zone: string): boolean {
  const checked = checkRow(row.table, cells, { file: "", line: 0 }, contextOf(zone));
  return (
    checked.verdict === "held" &&
    (checked.practice ?? null) === row.practice &&
    (checked.session_id ?? null) === row.session_id &&
    (checked.canal ?? null) === row.canal
  );
}

/** Far enough ahead that no time is still to come: what was held for that must be held for another reason. */
const now = new Date("2199-12-31T00:00:00Z");

function contextOf(zone: string): Context {
  return { zoneOf: () => zone, pseudonym: (_, reference) => reference, now };
}

/** Columns that may be marked, those that the reasons name first: they have words or numbers of their own that a mark breaks. */
function toMark(row: HeldToGo, cells: HeldAgain["cells"]): string[] {
  const breakable = tables[row.table].columns.filter(
    (column) => (cells[column.name] ?? "") !== "" && !unbreakable.includes(column.type),
  );
  const named = new Set(row.reasons.map((reason) => reason.column));
  return [
    ...breakable.filter((column) => named.has(column.name)),
    ...breakable.filter((column) => !named.has(column.name)),
  ].map((column) => column.name);
}

const unbreakable: readonly Column["type"][] = ["code", "patient", "canal"];

/** Checked values as the record format writes them. */
export function writtenCells(
  table: HeldToGo["table"],
  values: Readonly<Record<string, Value | null>>,
): Record<string, string> {
  const written = tables[table].columns.flatMap(({ name }) => {
    const value = name === "tooth_notation" ? "fdi" : values[name];
    if (value === null || value === undefined || value === "") return [];
    if (typeof value === "boolean") return [[name, value ? "yes" : "no"]];
    return [[name, String(value)]];
  });
  return Object.fromEntries(written);
}
