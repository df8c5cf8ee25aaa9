import type { Column } from "@/lib/records/column";

/** The range of a number column with its unit: " from 0 to 100 mL"; empty where it has none. */
export function rangeWords(column: Column): string {
  // A UCUM unit that begins with a digit, as 10.um for sizes in 1/100 mm, is no word.
  const unit = column.unit && !/^\d/.test(column.unit) ? ` ${column.unit}` : "";
  if (column.over !== undefined) return ` over ${column.over} and up to ${column.most}${unit}`;
  if (column.least !== undefined && column.most !== undefined)
    return ` from ${column.least} to ${column.most}${unit}`;
  return "";
}
