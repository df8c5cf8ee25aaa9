import type { Ends } from "@/lib/statistics/interval";
import { shareWords } from "./share-words";

/** Counts how often one kind of interval holds the truth, on which side it misses, and how wide it is. */
export class CoverageTally {
  private runs = 0;
  private covered = 0;
  private tooHigh = 0;
  private tooLow = 0;
  private widths = 0;

  constructor(
    private readonly name: string,
    private readonly truth: number,
  ) {}

  /** An interval that does not exist is counted apart: it neither covers nor misses. */
  add(ends: Ends | undefined): void {
    this.runs += 1;
    if (!ends) return;
    this.widths += ends.upper - ends.lower;
    if (this.truth < ends.lower) this.tooHigh += 1;
    else if (this.truth > ends.upper) this.tooLow += 1;
    else this.covered += 1;
  }

  /** @param scale of widths, such as 100 for per cent points */
  row(scale: number): Record<string, string | number> {
    const there = this.covered + this.tooHigh + this.tooLow;
    return {
      interval: this.name,
      "covers % (exact 95 %)": shareWords(this.covered, there),
      "lies too high %": ((100 * this.tooHigh) / there).toFixed(1),
      "lies too low %": ((100 * this.tooLow) / there).toFixed(1),
      "mean width": ((scale * this.widths) / there).toFixed(2),
      "does not exist": this.runs - there,
    };
  }
}
