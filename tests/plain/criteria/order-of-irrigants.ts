import type { Values } from "@/lib/records/column";
import { grouped } from "../grouped";
import type { Records } from "../records";
import { canalExclusion } from "../treatment-population";
import type { Unit } from "../unit";
import { anyHeld, type Visit } from "../visit";
import { canalDeliveries } from "./deliveries";
import { isFilled } from "./irrigants";
import { canalUnits, judged, visitUnits } from "./judged";
import type { Truth } from "./kleene";
import { exceptionOf } from "./steps-and-exceptions";

const chelators: readonly unknown[] = ["edta", "citric-acid", "hedp"];
const rinses: readonly unknown[] = ["saline", "water", "naocl"];
const neutral: readonly unknown[] = ["saline", "water"];

/** Canals filled with a chelator, by whether a rinse came after it. */
export function rinseAfterChelator(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const deliveries = canalDeliveries(visit, canal);
    const chelated = deliveries.some(({ irrigant }) => chelators.includes(irrigant));
    return judged({
      // Without a chelator there is nothing to rinse away, filled or not.
      member: chelated ? isFilled(canal) : false,
      outside: canalExclusion(visit, canal),
      met: rinsed(deliveries),
      excepted: exceptionOf("rinse-after-chelator", visit, canal),
    });
  });
}

type Placed = { readonly irrigant?: unknown; readonly loose: boolean };

function rinsed(deliveries: readonly Placed[]): Truth {
  const loose = deliveries.filter((one) => one.loose).map(({ irrigant }) => irrigant);
  const own = deliveries.filter(({ loose }) => !loose).map(({ irrigant }) => irrigant);
  const lastChelator = own.findLastIndex((irrigant) => chelators.includes(irrigant));
  const lastRinse = own.findLastIndex((irrigant) => rinses.includes(irrigant));
  // A chelator or a rinse whose place is not known may have been the last.
  const open = (kinds: readonly unknown[]) =>
    loose.some((irrigant) => irrigant === undefined || kinds.includes(irrigant));
  if (lastRinse > lastChelator || lastChelator === -1) return open(chelators) ? undefined : true;
  return open(rinses) ? undefined : false;
}

/** Visits with hypochlorite and chlorhexidine, by whether saline or water lay at every change from one to the other. */
export function noContact(records: Records): Unit[] {
  return visitUnits(records, (visit) => {
    const used = visit.deliveries.map(({ irrigant }) => irrigant);
    return judged({
      member: used.includes("naocl") && used.includes("chx"),
      met: apart(visit),
    });
  });
}

function apart(visit: Visit): Truth {
  const { sequences, loose } = sequencesOf(visit);
  // What is held may have been any irrigant, anywhere.
  const held = anyHeld(visit.held, "irrigation");
  const open = (kinds: readonly unknown[]) =>
    held || loose.some(({ irrigant }) => kinds.includes(irrigant));
  // Only what is neutral can have kept apart what seems to touch.
  if (sequences.some(touches)) return open(neutral) ? undefined : false;
  return open(["naocl", "chx"]) ? undefined : true;
}

/** Hypochlorite and chlorhexidine follow each other without saline or water since. */
function touches(deliveries: readonly Values[]): boolean {
  let last: unknown;
  for (const { irrigant } of deliveries) {
    if (neutral.includes(irrigant)) last = undefined;
    if (irrigant !== "naocl" && irrigant !== "chx") continue;
    if (last !== undefined && last !== irrigant) return true;
    last = irrigant;
  }
  return false;
}

/**
 * The deliveries that follow each other: all of the visit by the clock where each has a time, else by seq in each
 * canal by itself. Then those for the whole tooth are loose, unless there are no others.
 */
function sequencesOf({ deliveries }: Visit): { sequences: Values[][]; loose: Values[] } {
  if (deliveries.every((row) => row.started_at !== undefined)) {
    return { sequences: [[...deliveries].sort(byTheClock)], loose: [] };
  }
  const ofCanals = deliveries.filter((row) => row.canal !== undefined);
  // The visit's deliveries are in the order of seq.
  if (ofCanals.length === 0) return { sequences: [[...deliveries]], loose: [] };
  return {
    sequences: [...grouped(ofCanals, (row) => row.canal).values()],
    loose: deliveries.filter((row) => row.canal === undefined),
  };
}

/** By the time; at the same time by canal, the whole tooth first, and seq. */
function byTheClock(one: Values, other: Values): number {
  const byTime = Date.parse(String(one.started_at)) - Date.parse(String(other.started_at));
  if (byTime !== 0) return byTime;
  const [a, b] = [String(one.canal ?? ""), String(other.canal ?? "")];
  if (a !== b) return a < b ? -1 : 1;
  return Number(one.seq) - Number(other.seq);
}
