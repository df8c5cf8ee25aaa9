import type { Value } from "@/lib/records/column";

/** What is wrong with a cell and what would be right. */
export type Problem = { readonly found: string; readonly remedy: string };

/** Is it a problem and not a value. */
export function isProblem(checked: Value | Problem): checked is Problem {
  return typeof checked === "object";
}
