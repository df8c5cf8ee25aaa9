import { count } from "./quantity";

/** "26 to 50 of 60, latest first", or what is said where there is none. */
export function listWords(page: number, size: number, all: number, none: string): string {
  if (all === 0) return none;
  const first = (page - 1) * size + 1;
  if (first > all) return `There are ${count(all)}; this page lies beyond them.`;
  return `${count(first)} to ${count(Math.min(all, first + size - 1))} of ${count(all)}, latest first`;
}
