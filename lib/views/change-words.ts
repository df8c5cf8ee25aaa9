import type { Difference } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import { period } from "@/lib/records/period";
import { periodWords } from "./period-words";
import { decimal, quantity } from "./quantity";

/** Two periods of one measure, and their difference where it has an interval. */
export type Change = {
  readonly now: Figure;
  readonly before: Figure;
  readonly difference: Difference | undefined;
};

/** What changed against an earlier period, with its interval, and whether so many units settle it. */
export function changeWords({ now, before, difference }: Change): string {
  const against = `against ${periodNamed(before.period)}`;
  if (now.estimate === null || before.estimate === null)
    return `${sentence(against)}: nothing to compare, as one of the two has no estimate.`;
  if (!difference)
    return `${sentence(against)}: too few patients in one of the two for an interval of the difference.`;
  const { estimate, lower, upper, settled } = difference;
  const ends = `95 % interval ${differenceWords(now, lower)} to ${differenceWords(now, upper)}`;
  return `${sentence(against)}: ${differenceWords(now, estimate)} (${ends}): ${settled ? "more than chance easily gives" : "not settled by this many"}.`;
}

/** A difference with its sign, of shares in percentage points. */
export function differenceWords(figure: Pick<Figure, "kind" | "unit">, value: number): string {
  const words =
    figure.kind === "median" ? quantity(Math.abs(value), figure.unit) : points(Math.abs(value));
  return value === 0 ? words : `${value > 0 ? "+" : "−"}${words}`;
}

function points(share: number): string {
  const value = share * 100;
  const decimals = value < 10 ? 2 : 1;
  return `${decimal(value, decimals)} percentage points`;
}

function periodNamed(name: string): string {
  const found = period(name);
  return found ? periodWords(found) : name;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
