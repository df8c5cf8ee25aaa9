import { bisect } from "@/lib/statistics/bisection";

/**
 * The standardised distance of x1/n1 − x2/n2 from a supposed difference, with the variance at the
 * likeliest pair of proportions that differ by it, times N/(N − 1) (Miettinen & Nurminen 1985,
 * Stat Med 4:213). Infinite where the supposed difference leaves no variance.
 * @param difference strictly between −1 and 1
 */
export function differenceScore(
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  difference: number,
): number {
  const p2 = likeliestSecond(x1, n1, x2, n2, difference);
  const p1 = p2 + difference;
  const total = n1 + n2;
  const variance = (p1 * (1 - p1)) / n1 + (p2 * (1 - p2)) / n2;
  const distance = x1 / n1 - x2 / n2 - difference;
  return distance === 0 ? 0 : distance / Math.sqrt((variance * total) / (total - 1));
}

// The log likelihood along p1 = p2 + difference is concave, so its slope falls through zero once
// or keeps its sign to the edge; halving is steadier there than the closed form of the cubic.
function likeliestSecond(
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  difference: number,
): number {
  const slope = (p2: number) =>
    x1 / (p2 + difference) - (n1 - x1) / (1 - p2 - difference) + x2 / p2 - (n2 - x2) / (1 - p2);
  return bisect((p2) => slope(p2) < 0, Math.max(0, -difference), Math.min(1, 1 - difference));
}
