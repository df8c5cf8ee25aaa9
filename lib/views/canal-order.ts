import { canalNames } from "@/lib/records/canal-name";

/** Compares two canals by the order in which the trade lists them; unknown ones come last. */
export function inTradeOrder(one: string, other: string): number {
  return placeOf(one) - placeOf(other) || one.localeCompare(other);
}

function placeOf(canal: string): number {
  const found = (canalNames as readonly string[]).indexOf(canal);
  return found === -1 ? canalNames.length : found;
}
