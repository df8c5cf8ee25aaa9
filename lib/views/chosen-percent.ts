import { decimal } from "./quantity";

/** A share that somebody chose, as a target or a level: written as it was chosen, 95 % and not 95.0 %. */
export function chosenPercent(share: number): string {
  const value = Number((share * 100).toPrecision(12));
  return `${Number.isInteger(value) ? value : decimal(value, 1)} %`;
}
