import type { Field } from "@/lib/protocol/field";
import type { Value } from "@/lib/records/column";
import { duration } from "../quantity";
import { reasonWords } from "../reason-words";

/** What was found of a field, as it was written down; what is not there says so. */
export function foundWords(field: Field | undefined, value: Value | undefined): string {
  if (value === undefined) return "not recorded";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return field?.kind === "text" ? value : reasonWords(value);
  if (field?.unit === "s") return duration(value);
  const number = String(Number(value.toFixed(6)));
  return field?.unit ? `${number} ${field.unit === "d" ? "days" : field.unit}` : number;
}
