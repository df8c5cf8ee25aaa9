import type { Values } from "@/lib/records/column";
import { activation, dwell, flowTime, type Quantity, volume } from "./delivery";
import type { Records } from "./records";
import { canalSum, visitVolume } from "./sum";
import { canalExclusion, visitExclusion } from "./treatment-population";
import { notRecorded, type State, type Unit, unitOf } from "./unit";
import { type Canal, visitsOf } from "./visit";

const everyDelivery = () => true;
const hypochlorite = (delivery: Values) => delivery.irrigant === "naocl";

const ofCanal: Record<string, readonly [Quantity, (delivery: Values) => boolean]> = {
  "irrigation-time": [flowTime, everyDelivery],
  "hypochlorite-time": [flowTime, hypochlorite],
  "dwell-time": [dwell, everyDelivery],
  "activation-time": [activation, everyDelivery],
  volume: [volume, everyDelivery],
  "hypochlorite-volume": [volume, hypochlorite],
};

/** The units of a measure per canal of the treatment population; undefined where it is none. */
export function canalUnits(records: Records, measure: string): Unit[] | undefined {
  const found = ofCanal[measure];
  if (!found) return undefined;
  const sum = (canal: Canal) => canalSum(canal, ...found);
  return visitsOf(records).flatMap((visit) =>
    visit.canals.map((canal) =>
      unitOf(records, visit, canal, stateOf(canalExclusion(visit, canal), sum(canal))),
    ),
  );
}

/** The units of `volume-per-visit`: visits, left out for the reasons of canals; the work is the visit's clinician's. */
export function visitVolumeUnits(records: Records): Unit[] {
  return visitsOf(records).map((visit) =>
    unitOf(records, visit, undefined, stateOf(visitExclusion(visit), visitVolume(visit))),
  );
}

function stateOf(excluded: string | undefined, value: number | undefined): State {
  if (excluded !== undefined) return { excluded };
  return value === undefined ? notRecorded : { value };
}
