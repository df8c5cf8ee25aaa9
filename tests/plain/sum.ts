import type { Values } from "@/lib/records/column";
import { type Quantity, volume } from "./delivery";
import { anyHeld, type Canal, type Visit } from "./visit";

/**
 * A quantity summed over the canal's deliveries in the order of seq, of which `counted` says which
 * add to it. Undefined, never a part-sum, where any delivery is unknown or held, counted or not, or
 * where there is none.
 */
export function canalSum(
  canal: Canal,
  quantity: Quantity,
  counted: (delivery: Values) => boolean,
): number | undefined {
  // Any held delivery that names the canal, even one whose seq is that of an accepted row.
  if (anyHeld(canal.held, "irrigation")) return undefined;
  return wholeSum(
    canal.deliveries,
    (delivery) => quantity(delivery, canal.row.timer_reset),
    counted,
  );
}

/**
 * The visit's volume: its canals' and what was written down for the whole tooth. A held delivery of
 * the visit makes it unknown whatever canal it names, even one that the visit does not have.
 */
export function visitVolume(visit: Visit): number | undefined {
  if (anyHeld(visit.held, "irrigation")) return undefined;
  const timerReset = new Map(visit.canals.map(({ row }) => [row.canal, row.timer_reset]));
  const inOrder = [...visit.deliveries].sort((a, b) =>
    nameOf(a) < nameOf(b) ? -1 : nameOf(a) > nameOf(b) ? 1 : 0,
  );
  return wholeSum(
    inOrder,
    (delivery) => volume(delivery, timerReset.get(delivery.canal)),
    () => true,
  );
}

function wholeSum(
  deliveries: readonly Values[],
  quantityOf: (delivery: Values) => number | undefined,
  counted: (delivery: Values) => boolean,
): number | undefined {
  if (deliveries.length === 0) return undefined;
  let sum = 0;
  for (const delivery of deliveries) {
    const quantity = quantityOf(delivery);
    if (quantity === undefined) return undefined;
    if (counted(delivery)) sum += quantity;
  }
  return sum;
}

function nameOf(delivery: Values): string {
  return String(delivery.canal ?? "");
}
