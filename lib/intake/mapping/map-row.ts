import type { Column } from "@/lib/records/column";
import type { RawRow, Trouble } from "../raw-row";
import type { Context, Match } from "../sheet";
import { fieldOf } from "./field-of";
import { matchOf } from "./find-match";
import type { Mapping, TableFeed } from "./mapping";
import { type Cells, type FieldRead, fieldReader } from "./read-field";
import { runningNumber } from "./running-number";
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
  const numbers = runningNumber();
  const holds = conditions(feed, nameIn);
  const finds = "visit.at" in feed.fields;

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
    const troubles: Trouble[] = read.map(({ found, remedy }) => ({ found, remedy }));
    const others: Record<string, string> = {};
    for (const { name, field, read } of readers) {
      const found = read(inRow);
      if (found.nothing && field.required) return undefined;
      if (found.also) Object.assign(others, found.also);
      if (found.trouble) troubles.push({ column: name, ...found.trouble });
      if (found.text) cells[name] = found.text;
    }
    for (const [name, text] of Object.entries(others)) cells[name] ??= text;
    const matched =
      finds && !cells.session_id ? matchOf(cells, feed.minutes ?? 0, context) : undefined;
    if (matched) troubles.push(...matched.troubles);
    for (const name of numbered) cells[name] = String(numbers(groupOf(cells)));
    return { cells, troubles, ...(matched?.match ? { match: matched.match } : {}) };
  };
}

/** What rows are numbered within: the visit, or where and on which day it was, and the canal. */
function groupOf(cells: Cells): string {
  const visit =
    cells.session_id ??
    `${cells["visit.chair"] ?? ""}|${cells["visit.tooth"] ?? ""}|${(cells["visit.at"] ?? "").slice(0, 10)}`;
  return `${cells.practice ?? ""}|${visit}|${cells.canal ?? ""}`;
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
