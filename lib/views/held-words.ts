import { count } from "./quantity";

/** Held rows in words: how many, and what that means for the figures. */
export function heldWords(
  rows: readonly { readonly table: string; readonly rows: number }[],
): string {
  const all = rows.reduce((sum, one) => sum + one.rows, 0);
  if (all === 0) return "No rows are held.";
  const tables = rows.map((one) => `${count(one.rows)} in ${one.table}`).join(", ");
  return `${count(all)} ${all === 1 ? "row is" : "rows are"} held (${tables}), in all periods. A held row counts in no figure; a canal with a held delivery counts as not recorded. The record keeper can mend them.`;
}
