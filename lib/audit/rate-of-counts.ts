import { wilson } from "@/lib/statistics/proportion-interval";
import type { FigureInterval } from "./figure";
import { level } from "./level";

/** A share of counts that are no figure of their own, with Wilson's interval; undefined where there is nothing to share. */
export function rateOfCounts(
  numerator: number,
  denominator: number,
): { readonly estimate: number; readonly interval: FigureInterval } | undefined {
  const interval = wilson(numerator, denominator, level);
  return interval && { estimate: numerator / denominator, interval };
}
