import type { Records } from "./records";
import { canalExclusion } from "./treatment-population";
import { notRecorded, type State, type Unit, unitOf } from "./unit";
import { type Canal, type Visit, visitsOf } from "./visit";

/** Canals, by whether the timer was started afresh for them. */
export function timerReset(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const excluded = canalExclusion(visit, canal);
    if (excluded !== undefined) return { excluded };
    if (canal.row.timer_reset === "no-timer") return { excluded: "no-timer" };
    if (canal.row.timer_reset === "yes") return { yes: true };
    // A coded reason is evidence by itself, so it goes before "not recorded".
    const excepted = exceptionOf(visit, "timer-reset", canal);
    if (excepted !== undefined) return { excepted };
    return canal.row.timer_reset === "no" ? { yes: false } : notRecorded;
  });
}

/** Canals, by whether the working length and how it was found are there; never not recorded, and without exceptions. */
export function lengthRecorded(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const excluded = canalExclusion(visit, canal);
    if (excluded !== undefined) return { excluded };
    const { working_length_mm: length, length_method: method } = canal.row;
    return { yes: length !== undefined && method !== undefined };
  });
}

/** Visits, by the visit's own dam step; a step or an exception that names a canal says nothing of the visit. */
export function isolation(records: Records): Unit[] {
  return visitsOf(records).map((visit) => {
    const step = visit.steps.find((one) => one.step === "dam" && one.canal === undefined);
    return unitOf(records, visit, undefined, isolationState(visit, step?.status, step?.reason));
  });
}

function isolationState(visit: Visit, dam: unknown, reason: unknown): State {
  if (visit.session.outcome === "abandoned") return { excluded: "abandoned" };
  if (dam === "not-applicable") return { excluded: "not-applicable" };
  if (dam === "done") return { yes: true };
  // The step's own reason goes before the exceptions table's.
  if (dam === "excepted") return { excepted: String(reason) };
  const excepted = exceptionOf(visit, "isolation");
  if (excepted !== undefined) return { excepted };
  return dam === "not-done" ? { yes: false } : notRecorded;
}

/** The coded reason of an exception: the canal's own goes before the visit's. */
function exceptionOf(visit: Visit, criterion: string, canal?: Canal): string | undefined {
  const reasonOf = (name: unknown) =>
    visit.exceptions.find((one) => one.criterion === criterion && one.canal === name)?.reason;
  const reason = (canal && reasonOf(canal.row.canal)) ?? reasonOf(undefined);
  return reason === undefined ? undefined : String(reason);
}

function canalUnits(records: Records, stateOf: (visit: Visit, canal: Canal) => State): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.map((canal) => unitOf(records, visit, canal, stateOf(visit, canal))),
  );
}
