import type { UnitKind } from "@/lib/protocol/criterion";
import { reasonWords } from "../reason-words";
import { type OwnWords, plainCode } from "./own-words";

/** A step of the protocol: "rubber dam". */
export function stepWords(step: string, own: OwnWords): string {
  return own[`step/${step}`] ?? steps[step] ?? plainCode(step);
}

/** An upkeep task: "rinsing of the irrigation line". */
export function taskWords(task: string, own: OwnWords): string {
  return own[`task/${task}`] ?? tasks[task] ?? plainCode(task);
}

/** A reason to leave a unit out, or why one was excepted. */
export function ownReasonWords(reason: string, own: OwnWords): string {
  return own[`reason/${reason}`] ?? reasonWords(reason);
}

/** What is counted, as one and as several. */
export const unitWords: Readonly<
  Record<UnitKind, { readonly one: string; readonly several: string }>
> = {
  canal: { one: "canal", several: "canals" },
  delivery: { one: "delivery of irrigant", several: "deliveries of irrigant" },
  use: { one: "use of an instrument", several: "uses of instruments" },
  separation: { one: "separated instrument", several: "separated instruments" },
  visit: { one: "visit", several: "visits" },
  "chair-day": { one: "day of a chair", several: "days of chairs" },
};

const steps: Readonly<Record<string, string>> = {
  dam: "rubber dam",
  "length-radiograph": "radiograph of the working length",
  "apex-locator": "apex locator",
  "glide-path": "glide path",
  "filling-removed": "removal of the old filling",
  "torque-calibration": "calibration of the torque",
  "line-check": "check of the irrigation line",
  "instrument-inspection": "inspection of the instruments",
  "handpiece-care": "care of the handpiece",
  "final-rinse": "final rinse",
};
const tasks: Readonly<Record<string, string>> = {
  "line-rinse": "rinsing of the irrigation line",
  "line-dry": "drying of the irrigation line",
};
