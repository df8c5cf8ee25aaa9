import type { Values } from "@/lib/records/column";

/** A quantity of one delivery; undefined where it is not recorded and cannot be derived. */
export type Quantity = (delivery: Values, timerReset: unknown) => number | undefined;

/** Seconds that irrigant flowed; a missing time is volume ÷ flow. */
export const flowTime: Quantity = (delivery, timerReset) => {
  // It may hold earlier canals. Nor is a time derived for it: the notes say "is not recorded".
  if (readOffRunningTimer(delivery, timerReset)) return undefined;
  if (delivery.duration_s !== undefined) return Number(delivery.duration_s);
  if (delivery.volume_ml === undefined || delivery.flow_ml_min === undefined) return undefined;
  return (Number(delivery.volume_ml) / Number(delivery.flow_ml_min)) * 60;
};

/** Millilitres delivered; a missing volume is flow × time, unless the time is a running timer's. */
export const volume: Quantity = (delivery, timerReset) => {
  if (delivery.volume_ml !== undefined) return Number(delivery.volume_ml);
  if (readOffRunningTimer(delivery, timerReset)) return undefined;
  if (delivery.flow_ml_min === undefined || delivery.duration_s === undefined) return undefined;
  return (Number(delivery.flow_ml_min) * Number(delivery.duration_s)) / 60;
};

/** Millilitres a minute; a missing flow is volume ÷ time, unless there is no time or it is a running timer's. */
export const flow: Quantity = (delivery, timerReset) => {
  if (delivery.flow_ml_min !== undefined) return Number(delivery.flow_ml_min);
  if (readOffRunningTimer(delivery, timerReset)) return undefined;
  if (delivery.volume_ml === undefined || !(Number(delivery.duration_s) > 0)) return undefined;
  return (Number(delivery.volume_ml) / Number(delivery.duration_s)) * 60;
};

/** Seconds that irrigant was left in place. */
export const dwell: Quantity = ({ dwell_s }) =>
  dwell_s === undefined ? undefined : Number(dwell_s);

/** Seconds of activation: 0 where there was none, unknown where it is not said whether there was. */
export const activation: Quantity = ({ activation: way, activation_s }) => {
  if (way === "none") return 0;
  if (way === undefined || activation_s === undefined) return undefined;
  return Number(activation_s);
};

function readOffRunningTimer(delivery: Values, timerReset: unknown): boolean {
  return delivery.basis === "timer" && timerReset === "no";
}
