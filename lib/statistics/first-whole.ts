/**
 * The first whole number from `low` at which it holds, by halving; `high` where it does at none before.
 * @param low whole
 * @param high whole, not under `low`
 * @param holds false up to some number and true from it on
 */
export function firstWhole(low: number, high: number, holds: (whole: number) => boolean): number {
  let from = low;
  let to = high;
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
