import type { Delivery } from "./deliveries";
import type { Truth } from "./kleene";

/**
 * Do the parts of the deliveries that count come to the floor: yes where those that are known do, not known where an
 * unknown part could make it so, else no. To a millionth, so that the order of adding makes no difference.
 */
export function reaches(
  floor: number,
  deliveries: readonly Delivery[],
  counts: (delivery: Delivery) => Truth,
  parts: (delivery: Delivery) => readonly (number | undefined)[],
): Truth {
  let sum = 0;
  let open = false;
  for (const delivery of deliveries) {
    const counted = counts(delivery);
    if (counted === false) continue;
    if (counted === undefined) {
      open = true;
      continue;
    }
    for (const part of parts(delivery)) {
      if (part === undefined) open = true;
      else sum += part;
    }
  }
  if (Math.round(sum * 1e6) / 1e6 >= floor) return true;
  return open ? undefined : false;
}
