import { requireProbability } from "@/lib/statistics/probability";

/**
 * The p-values adjusted by Benjamini & Hochberg 1995, JRSS B 57:289: the smallest level of false
 * discovery at which each would be called, in the order given. With m values and rank i from the
 * smallest, the least of m·p/i over this and all larger ones. Equal values get equal answers.
 * @param p each from 0 to 1, in any order, left as they are; none gives none
 * @throws RangeError for a value that is no probability
 */
export function benjaminiHochberg(p: readonly number[]): number[] {
  for (const value of p) requireProbability(value, "a p-value");
  const ascending = p.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value);
  const adjusted = p.slice();
  let least = Number.POSITIVE_INFINITY;
  for (let rank = p.length; rank >= 1; rank -= 1) {
    const { value, index } = ascending[rank - 1] as { value: number; index: number };
    least = Math.min(least, (p.length / rank) * value);
    adjusted[index] = least;
  }
  return adjusted;
}
