import type { Records } from "../records";
import type { Unit } from "../unit";
import { isolation, lengthConfirmed, lengthRecorded, patency } from "./before-irrigation";
import { handpieceCare, lineCheck, torqueCalibration } from "./equipment";
import { speedTorqueWithin, traceable, useLimit } from "./instruments";
import { activationFor, chelator, hypochloriteFloor, mainIrrigant } from "./irrigants";
import { lineDry, lineRinse } from "./line-upkeep";
import { noContact, rinseAfterChelator } from "./order-of-irrigants";
import { recordComplete } from "./record-complete";
import { separationManaged } from "./separation-managed";
import { flowWithin, timerReset, tipDepth } from "./tip-and-flow";

/** What a practice sets for the three criteria that are not in force until it does. */
export type Limits = {
  /** mL/min */
  readonly flow: number;
  /** Seconds. */
  readonly activation: number;
  /** 1/min, and N.cm; the same for each kind of powered instrument. */
  readonly speed: number;
  readonly torque: number;
};

/** The limits of the tests. */
export const limitsOfTests: Limits = { flow: 8, activation: 60, speed: 500, torque: 3 };

type Plain = (records: Records, limits: Limits) => Unit[];

const ofVisitsAndCanals: Readonly<Record<string, Plain>> = {
  isolation,
  "length-recorded": lengthRecorded,
  "length-confirmed": lengthConfirmed,
  patency,
  "main-irrigant": mainIrrigant,
  "hypochlorite-floor": hypochloriteFloor,
  chelator,
  "rinse-after-chelator": rinseAfterChelator,
  "no-hypochlorite-chlorhexidine-contact": noContact,
  "tip-depth": tipDepth,
  "flow-limit": (records, { flow }) => flowWithin(records, flow),
  activation: (records, { activation }) => activationFor(records, activation),
  "timer-reset": timerReset,
  "speed-torque": speedTorqueWithin,
  "use-limit": useLimit,
  traceable,
  "separation-managed": separationManaged,
  "line-check": lineCheck,
  "torque-calibration": torqueCalibration,
  "handpiece-care": handpieceCare,
};

const aboutRecording: readonly string[] = ["length-recorded", "traceable"];
const notAtFirst: readonly string[] = ["flow-limit", "activation", "speed-torque"];

/** The criteria in force where nobody has changed anything. */
export const inForceAtFirst: readonly string[] = Object.keys(ofVisitsAndCanals).filter(
  (id) => !notAtFirst.includes(id),
);

/**
 * The units of a criterion; undefined where there is none of that id. `inForce` is what a complete record needs
 * evidence for.
 */
export function criterionUnits(
  records: Records,
  id: string,
  limits: Limits = limitsOfTests,
  inForce: readonly string[] = inForceAtFirst,
): Unit[] | undefined {
  if (id === "line-rinse") return lineRinse(records);
  if (id === "line-dry") return lineDry(records);
  if (id !== "record-complete") return ofVisitsAndCanals[id]?.(records, limits);
  const others = inForce.map((other) => ({
    units: ofVisitsAndCanals[other]?.(records, limits) ?? [],
    aboutRecording: aboutRecording.includes(other),
  }));
  return recordComplete(records, others);
}
