import type { Figure } from "./figure";

/** Under so many units nothing is read into a figure: as many as a comparison asks of each clinician. */
export const fewestUnits = 10;

/** Are there too few units to tell anything. */
export function tooFewToTell(figure: Figure): boolean {
  return (figure.kind === "median" ? figure.n : figure.denominator) < fewestUnits;
}
