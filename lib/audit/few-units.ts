import type { Figure } from "./figure";

/** Below so many units in a quarter a rate opens on four rolling quarters (the design's rule for small rates). */
export const fewUnits = 60;

/** Do these rates, drawn side by side, open on four rolling quarters: where any of them has units but fewer than 60. */
export function opensOnFourQuarters(figures: readonly Figure[]): boolean {
  return figures.some(
    (figure) => figure.kind === "rate" && figure.denominator > 0 && figure.denominator < fewUnits,
  );
}
