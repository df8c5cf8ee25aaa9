import { fieldOf } from "./field-of";
import type { Mapping, TableFeed } from "./mapping";
import { alike } from "./words";

/**
 * Is a file of a mapping's shape, by its column names, whatever their case and order: `same` where they are the same, `has all`
 * where every column is there that the mapping needs.
 */
export function fits(mapping: Mapping, header: readonly string[]): "same" | "has all" | undefined {
  const has = new Set(header.map(alike));
  const made = new Set(mapping.columns.map(alike));
  if (has.size === made.size && [...made].every((name) => has.has(name))) return "same";
  const needed = columnsNeeded(mapping);
  return needed.length > 0 && needed.every((name) => has.has(alike(name))) ? "has all" : undefined;
}

/**
 * The columns that a file must have for a mapping, each once: all that it reads; of JSON, whose rows leave out what is not recorded,
 * those of required fields and of what finds a visit.
 */
export function columnsNeeded({ file, tables }: Mapping): string[] {
  const sparse = file.kind === "json" || file.kind === "json-lines";
  return [...new Set(tables.flatMap(sparse ? columnsRequired : columnsRead))];
}

/** The columns that a table's feeds and conditions name, each once. */
export function columnsRead({ fields, only = [] }: TableFeed): string[] {
  const fed = Object.values(fields).flatMap((feed) => ("columns" in feed ? feed.columns : []));
  return [...new Set([...fed, ...only.map((condition) => condition.column)])];
}

function columnsRequired({ table, fields }: TableFeed): string[] {
  return Object.entries(fields).flatMap(([name, feed]) => {
    const needed = name === "visit.at" || fieldOf(table, name)?.required === true;
    return needed && "columns" in feed ? feed.columns : [];
  });
}
