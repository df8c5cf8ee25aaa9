import type { Difference } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import { decimal, quantity } from "./quantity";

type Measured = Pick<Figure, "kind" | "unit">;
type Ends = Pick<Difference, "lower" | "upper">;

/** "0.8 mL less", "3.1 percentage points more", "the same": the first of two values beside the second. */
export function moreOrLess(of: Measured, difference: number): string {
  if (difference === 0) return "the same";
  return `${size(of, difference)} ${side(difference)}`;
}

/** Both ends of a difference: "2.1 mL less to 0.5 mL more", "0.6 mL to 3.2 mL more", "1.9 less to 12.0 percentage points more". */
export function rangeMoreOrLess(of: Measured, { lower, upper }: Ends): string {
  if (lower < 0 && upper <= 0) {
    const nearest = upper === 0 ? "nothing" : withoutPoints(of, upper);
    return `${nearest} to ${size(of, lower)} less`;
  }
  if (lower >= 0) {
    const nearest = lower === 0 ? "nothing" : withoutPoints(of, lower);
    return `${nearest} to ${size(of, upper)} more`;
  }
  return `${withoutPoints(of, lower)} less to ${size(of, upper)} more`;
}

/** Both ends with their signs, for brackets behind a difference in words: "−1.2 to +7.4", "−2.1 mL to +0.5 mL". */
export function signedRange(of: Measured, { lower, upper }: Ends): string {
  return `${signed(of, lower)} to ${signed(of, upper)}`;
}

function signed(of: Measured, value: number): string {
  return value === 0 ? "0" : `${value > 0 ? "+" : "−"}${withoutPoints(of, value)}`;
}

function side(difference: number): string {
  return difference > 0 ? "more" : "less";
}

function size(of: Measured, value: number): string {
  return of.kind === "median"
    ? withoutPoints(of, value)
    : `${withoutPoints(of, value)} percentage points`;
}

/** The size with its unit, that of shares understood. What is not 0 is never shown as 0, and needs no "under". */
function withoutPoints({ kind, unit }: Measured, value: number): string {
  const amount = Math.abs(value);
  if (kind === "median") return amount < 0.05 ? `${small(amount)} ${unit}` : quantity(amount, unit);
  const points = amount * 100;
  if (points < 0.005) return small(points);
  // As coarse as an interval of a difference deserves; what is under a point keeps two decimals.
  return decimal(points, points < 0.995 ? 2 : 1);
}

/** One digit that says something. */
function small(amount: number): string {
  const decimals = Math.min(12, Math.ceil(-Math.log10(amount)));
  return decimal(amount, decimals);
}
