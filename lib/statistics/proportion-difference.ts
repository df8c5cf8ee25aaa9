import { bisect } from "@/lib/statistics/bisection";
import { requireEventsAmong, requireLevel } from "@/lib/statistics/count-and-level";
import { differenceScore } from "@/lib/statistics/difference-score";
import type { Interval } from "@/lib/statistics/interval";
import { twoSidedNormalQuantile } from "@/lib/statistics/normal";
import { squareAndAdd } from "@/lib/statistics/square-and-add";
import { wilsonEnds } from "@/lib/statistics/wilson-ends";

/**
 * Interval for x1/n1 − x2/n2 from the two Wilson intervals (Newcombe 1998, Stat Med 17:873,
 * method 10, without continuity correction). For clustered ends use `squareAndAdd` itself.
 * @param x1 events of the first group, whole, from 0 to `n1`
 * @param n1 units of the first group, whole
 * @param x2 events of the second group, whole, from 0 to `n2`
 * @param n2 units of the second group, whole
 * @param level such as 0.95
 * @returns undefined where a group has no units
 * @throws RangeError for counts or a level that cannot be
 */
export function newcombe(
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  level: number,
): Interval | undefined {
  requireGroups(x1, n1, x2, n2, level);
  if (n1 === 0 || n2 === 0) return undefined;
  const z = twoSidedNormalQuantile(level);
  const first = { estimate: x1 / n1, ...wilsonEnds(x1 / n1, n1, z) };
  const second = { estimate: x2 / n2, ...wilsonEnds(x2 / n2, n2, z) };
  return { ...squareAndAdd(first, second), level, method: "newcombe" };
}

/**
 * Interval for x1/n1 − x2/n2 by inverting the score test with the variance of Miettinen & Nurminen
 * 1985, Stat Med 4:213. Arguments, absence and errors as in {@link newcombe}.
 */
export function miettinenNurminen(
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  level: number,
): Interval | undefined {
  requireGroups(x1, n1, x2, n2, level);
  if (n1 === 0 || n2 === 0) return undefined;
  const z = twoSidedNormalQuantile(level);
  return {
    lower: -upperByScore(x2, n2, x1, n1, z),
    upper: upperByScore(x1, n1, x2, n2, z),
    level,
    method: "miettinen-nurminen",
  };
}

// The score falls as the supposed difference rises, to −∞ at 1. A difference of 1 is its own end.
function upperByScore(x1: number, n1: number, x2: number, n2: number, z: number): number {
  const score = (difference: number) => differenceScore(x1, n1, x2, n2, difference);
  return bisect((difference) => score(difference) < -z, x1 / n1 - x2 / n2, 1);
}

function requireGroups(x1: number, n1: number, x2: number, n2: number, level: number): void {
  requireEventsAmong(x1, n1);
  requireEventsAmong(x2, n2);
  requireLevel(level);
}
