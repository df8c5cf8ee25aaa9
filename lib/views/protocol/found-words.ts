import type { Field } from "@/lib/protocol/field";
import type { Value } from "@/lib/records/column";
import { duration } from "../quantity";
import { setQuantity, valueWords } from "./value-words";

/** What was found of a field, as it was written down; what is not there says so. */
export function foundWords(field: Field | undefined, value: Value | undefined): string {
  if (value === undefined) return "not recorded";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string")
    return !field || field.kind === "text" ? value : valueWords(field, value);
  if (field?.unit === "s") return duration(value);
  return setQuantity(value, field?.unit);
}
