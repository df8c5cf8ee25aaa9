import { randomInt } from "node:crypto";

/** Without 0, 1, i, l, o, u: nothing to misread or misspell on paper. */
const letters = "abcdefghjkmnpqrstvwxyz23456789";

/** A password to be told once: four groups of four, near 79 bits (computed: 16 log2 30). */
export function madePassword(): string {
  const group = () => Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join("");
  return [group(), group(), group(), group()].join("-");
}
