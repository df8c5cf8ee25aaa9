import type { Values } from "@/lib/records/column";
import type { Records } from "./records";
import { notRecorded, type State, type Unit } from "./unit";
import { visitsOf } from "./visit";

/** Seconds of rinsing that meet the criterion. */
const enough = 30;

/** Chair-days: a local day on which a visit with a continuous delivery started in the chair. It is no clinician's. */
export function lineRinse(records: Records): Unit[] {
  const days = visitsOf(records)
    .filter((visit) => visit.deliveries.some((one) => one.delivery === "continuous"))
    .map(({ practice, session, day }) => ({ practice, chair: String(session.chair), day }));
  const distinct = new Map(
    days.map((one) => [JSON.stringify([one.practice, one.chair, one.day]), one]),
  );
  return [...distinct.values()].map((one) => {
    const rows = records.upkeep.filter(
      ({ practice, chair, day, task }) =>
        task === "line-rinse" &&
        practice === one.practice &&
        chair === one.chair &&
        day === one.day,
    );
    return { ...one, state: stateOf(rows) };
  });
}

/**
 * Every device of the chair must pass, so one that fails outweighs one not recorded, and that one
 * that passes. A device out of service is left out, the day with it only where all are.
 */
function stateOf(rows: readonly Values[]): State {
  if (rows.length === 0) return notRecorded;
  const inService = rows.filter((row) => row.status !== "out-of-service");
  if (inService.length === 0) return { excluded: "out-of-service" };
  if (inService.some(fails)) return { yes: false };
  // Done without a duration: not known to have been long enough.
  if (inService.some((row) => row.duration_s === undefined)) return notRecorded;
  return { yes: true };
}

function fails({ status, duration_s }: Values): boolean {
  return status === "not-done" || (duration_s !== undefined && Number(duration_s) < enough);
}
