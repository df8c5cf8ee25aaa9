import type { Column } from "@/lib/records/column";

/** What a cell of a choice may hold: "one of done, not-done". */
export function choiceWords(column: Column): string {
  const own = column.alsoOwn ? ", or a code of the practice's own that begins with own-" : "";
  return `one of ${column.choices?.join(", ")}${own}`;
}
