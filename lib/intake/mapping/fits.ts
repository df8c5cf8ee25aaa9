import type { Mapping, TableFeed } from "./mapping";
import { alike } from "./words";

/**
 * Is a file of a mapping's shape, by its column names, whatever their case and order: `same` where they are the same, `has all`
 * where every column is there that the mapping reads.
 */
export function fits(mapping: Mapping, header: readonly string[]): "same" | "has all" | undefined {
  const has = new Set(header.map(alike));
  const made = new Set(mapping.columns.map(alike));
  if (has.size === made.size && [...made].every((name) => has.has(name))) return "same";
  const read = mapping.tables.flatMap(columnsRead);
  return read.length > 0 && read.every((name) => has.has(alike(name))) ? "has all" : undefined;
}

/** The columns that a table's feeds and conditions name, each once. */
export function columnsRead({ fields, only = [] }: TableFeed): string[] {
  const fed = Object.values(fields).flatMap((feed) => ("columns" in feed ? feed.columns : []));
  return [...new Set([...fed, ...only.map((condition) => condition.column)])];
}
