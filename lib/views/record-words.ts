import type { Column, Value, Values } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { day, moment } from "./day";
import { reasonWords } from "./reason-words";

/** What a table's rows are called. */
export const tableWords: Readonly<Record<TableName, string>> = {
  people: "people",
  sessions: "visit",
  canals: "canals",
  irrigation: "deliveries",
  instruments: "instrument uses",
  followups: "follow-ups",
  steps: "steps",
  exceptions: "exceptions",
  incidents: "incidents",
  upkeep: "upkeep of the chair that day",
};

/** An irrigant as it is read. */
export function irrigantWords(irrigant: Value | undefined): string {
  return irrigants[String(irrigant)] ?? reasonWords(String(irrigant));
}

/** Every recorded value of a row in words, in the order of the format's columns; what is not recorded is not listed. */
export function rowWords(table: TableName, values: Values, zone: string): string {
  return tables[table].columns
    .filter((column) => values[column.name] !== undefined && values[column.name] !== "")
    .map((column) => `${columnWords(column)} ${cellWords(column, values[column.name], zone)}`)
    .join("; ");
}

/** What a column is called in a sentence. */
export function columnWords(column: Column): string {
  return column.name
    .replace(/_(mm|ml|s|pct|deg|ml_min|per_min|n_cm|at|id)$/, "")
    .replace(/_ml$/, "")
    .replaceAll("_", " ");
}

/** A recorded value with its unit. */
export function cellWords(column: Column, value: Value | undefined, zone: string): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (column.type === "instant") return moment(new Date(String(value)), zone);
  if (column.type === "day") return day(String(value));
  if (column.name === "irrigant") return irrigantWords(value);
  if (column.type === "choice") return reasonWords(String(value));
  return column.unit && column.unit !== "10.um"
    ? `${value} ${units[column.unit] ?? column.unit}`
    : String(value);
}

const units: Record<string, string> = { deg: "°", "N.cm": "N·cm", "/min": "a minute" };
const irrigants: Record<string, string> = {
  naocl: "hypochlorite",
  edta: "EDTA",
  chx: "chlorhexidine",
  hedp: "HEDP",
  "citric-acid": "citric acid",
  other: "another irrigant",
};
