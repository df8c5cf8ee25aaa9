import type { Values } from "@/lib/records/column";
import { activation, dwell, flow, flowTime, volume } from "../delivery";
import { anyHeld, type Canal, type Visit } from "../visit";

/** What is known of one delivery; what is not recorded and cannot be derived is absent. */
export type Delivery = {
  readonly irrigant?: string | undefined;
  readonly concentration?: number | undefined;
  readonly way?: string | undefined;
  readonly volume?: number | undefined;
  readonly flow?: number | undefined;
  readonly time?: number | undefined;
  readonly dwell?: number | undefined;
  readonly activated?: number | undefined;
  readonly tip?: number | undefined;
  /** Where it stands among the others is not known. */
  readonly loose: boolean;
};

/** A delivery of which it is only known that there may have been one. */
export const unknownDelivery: Delivery = { loose: true };

/** A delivery as recorded, with what can be derived for it. */
export function asRecorded(row: Values, timerReset: unknown): Delivery {
  return {
    ...saidOfAny(row),
    volume: volume(row, timerReset),
    flow: flow(row, timerReset),
    time: flowTime(row, timerReset),
    dwell: dwell(row, timerReset),
    activated: activation(row, timerReset),
    tip: row.tip_short_mm === undefined ? undefined : Number(row.tip_short_mm),
    loose: false,
  };
}

/** What a delivery written down for the whole tooth says of one of its canals: what it was, not how much nor when. */
export function ofWholeTooth(row: Values): Delivery {
  return {
    ...saidOfAny(row),
    // What was activated in none of the canals was not in this one.
    activated: row.activation === "none" ? 0 : undefined,
    loose: true,
  };
}

/** The canal's own deliveries, in the order of seq. */
export function ownDeliveries(canal: Canal): Delivery[] {
  return canal.deliveries.map((row) => asRecorded(row, canal.row.timer_reset));
}

/** What was written down for the whole tooth, as it bears on one canal. */
export function wholeToothDeliveries(visit: Visit): Delivery[] {
  return visit.deliveries.filter((row) => row.canal === undefined).map(ofWholeTooth);
}

/** All that may have been delivered into the canal at the visit: its own in their order, then what is loose. */
export function canalDeliveries(visit: Visit, canal: Canal): Delivery[] {
  const own = ownDeliveries(canal);
  const missing = own.length === 0 || anyHeld(canal.held, "irrigation");
  return [...own, ...wholeToothDeliveries(visit), ...(missing ? [unknownDelivery] : [])];
}

function saidOfAny(row: Values): Pick<Delivery, "irrigant" | "concentration" | "way"> {
  const concentration = row.concentration_pct;
  return {
    irrigant: String(row.irrigant),
    concentration: concentration === undefined ? undefined : Number(concentration),
    way: String(row.delivery),
  };
}
