import type { Column } from "@/lib/records/column";
import type { RawRow, Trouble } from "../raw-row";
import type { Context, Match } from "../sheet";
import { fieldOf } from "./field-of";
import { matchOf } from "./find-match";
import { columnsRead } from "./fits";
import type { Mapping, TableFeed } from "./mapping";
import { type Cells, type FieldRead, fieldReader } from "./read-field";
import { numberByTime, runningNumber } from "./running-number";
import { alike } from "./words";

/** A row of the file as a row of one table, its cells as the record format writes them. */
export type MappedRow = {
  readonly cells: Readonly<Record<string, string>>;
  readonly troubles: readonly Trouble[];
  /** Of a row that names no visit. */
  readonly match?: Match;
};

type FieldReader = {
  readonly name: string;
  readonly field: Column;
  read(cells: Cells): FieldRead;
};

/**
 * Compiles a table's feeds for a file with this header. The function answers undefined for a row that feeds no row of the table: a
 * condition does not hold, or a word says that a required field is not recorded.
 */
export function rowMapper(
  mapping: Mapping,
  feed: TableFeed,
  header: readonly string[],
  context: Context,
): (row: RawRow) => MappedRow | undefined {
  const inFile = new Map(header.map((name) => [alike(name), name]));
  const nameIn = (name: string) => inFile.get(alike(name)) ?? name;
  const readers = Object.entries(feed.fields).map(([name, one]) => reader(name, one));
  const numbered = Object.entries(feed.fields).flatMap(([name, one]) =>
    "numbered" in one ? [name] : [],
  );
  const numberOf = numbering(context);
  const holds = conditions(feed, nameIn);
  const finds = "visit.at" in feed.fields;
  const taken = troublesTaken(feed, nameIn);

  function reader(name: string, one: TableFeed["fields"][string]): FieldReader {
    const field: Column = fieldOf(feed.table, name) ?? {
      name,
      type: "code",
      says: "",
      example: "",
    };
    if ("always" in one) return { name, field, read: () => ({ text: one.always }) };
    if ("numbered" in one) return { name, field, read: () => ({}) };
    const columns = one.columns.map(nameIn);
    return { name, field, read: fieldReader(field, one, columns, mapping.file) };
  }

  return ({ cells: inRow, troubles: read = [] }) => {
    if (!holds(inRow)) return undefined;
    const cells: Record<string, string> = {};
    const troubles = read.flatMap(taken);
    const others: Record<string, string> = {};
    for (const { name, field, read } of readers) {
      const found = read(inRow);
      if (found.nothing && field.required) return undefined;
      if (found.also) Object.assign(others, found.also);
      if (found.trouble) troubles.push({ column: toldUnder(name), ...found.trouble });
      if (found.text) cells[name] = found.text;
    }
    for (const [name, text] of Object.entries(others)) cells[name] ??= text;
    const lost = troubles.some(({ column }) => column === "session_id");
    const matched =
      finds && !lost && !cells.session_id ? matchOf(cells, feed.minutes ?? 0, context) : undefined;
    if (matched) troubles.push(...matched.troubles);
    for (const name of numbered) cells[name] = String(numberOf(cells, matched?.match));
    return { cells, troubles, ...(matched?.match ? { match: matched.match } : {}) };
  };
}

/** The reader's troubles under the fields that their columns feed; what is wrong in a column that nothing reads is no matter. */
function troublesTaken(feed: TableFeed, nameIn: (name: string) => string) {
  const fieldOfColumn = new Map(columnsRead(feed).map((column) => [nameIn(column), ""]));
  for (const [name, one] of Object.entries(feed.fields))
    if ("columns" in one)
      for (const column of one.columns) fieldOfColumn.set(nameIn(column), toldUnder(name));
  return ({ column, found, remedy }: Trouble): Trouble[] => {
    if (column === undefined) return [{ found, remedy }];
    const field = fieldOfColumn.get(column);
    if (field === undefined) return [];
    return [{ ...(field === "" ? {} : { column: field }), found, remedy }];
  };
}

/** What finds the visit is no column of the table; its troubles are those of the visit's number. */
function toldUnder(field: string): string {
  return field.startsWith("visit.") ? "session_id" : field;
}

/** Rows are numbered within the visit and canal; those that name no visit by their time, within the chair, day and canal. */
function numbering(context: Context) {
  const running = runningNumber();
  const byTime = numberByTime();
  return (cells: Cells, match: Match | undefined) => {
    const within = `${cells.practice ?? ""}|${cells.canal?.toLowerCase() ?? ""}`;
    if (!match) return running(`${within}|${cells.session_id ?? ""}`);
    const zone = context.zoneOf(match.practice) ?? "UTC";
    return byTime(`${within}|${match.chair ?? ""}`, match.at, zone);
  };
}

function conditions({ only = [] }: TableFeed, nameIn: (name: string) => string) {
  const all = only.map(({ column, is, not }) => ({
    column: nameIn(column),
    is: is && new Set(is.map(alike)),
    not: not && new Set(not.map(alike)),
  }));
  return (cells: Cells) =>
    all.every(({ column, is, not }) => {
      const text = alike(cells[column] ?? "");
      return (!is || is.has(text)) && !not?.has(text);
    });
}
