import type { Figure } from "@/lib/audit/figure";
import { percent } from "./quantity";

/** An event that happened in none of the units is no rate of 0: what is known is how high it may still be. */
export function noneSeen(figure: Figure): boolean {
  return figure.kind === "rate" && figure.estimate === 0 && !figure.criterion;
}

/** "up to 1.01 %": the upper end of the interval where none was seen. */
export function atMostWords(figure: Figure): string {
  return figure.interval ? `up to ${percent(figure.interval.upper)}` : "too few to tell";
}
