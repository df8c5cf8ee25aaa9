import type { Values } from "@/lib/records/column";
import type { Records } from "../records";
import { notRecorded, type State, type Unit } from "../unit";
import { visitsOf } from "../visit";

/** Seconds of rinsing that meet the criterion. */
const enough = 30;

/** Chair-days, by whether the line was rinsed for at least 30 s. */
export function lineRinse(records: Records): Unit[] {
  return chairDays(records, "line-rinse", ({ status, duration_s: seconds }) => {
    if (status === "not-done") return false;
    // Done without a duration: not known to have been long enough.
    return seconds === undefined ? undefined : Number(seconds) >= enough;
  });
}

/** Chair-days, by whether the line was dried, for however long. */
export function lineDry(records: Records): Unit[] {
  return chairDays(records, "line-dry", ({ status }) => status === "done");
}

/** Local days on which a visit with a continuous delivery started in the chair. They are no clinician's. */
function chairDays(
  records: Records,
  task: string,
  passes: (row: Values) => boolean | undefined,
): Unit[] {
  const days = visitsOf(records)
    .filter((visit) => visit.deliveries.some((one) => one.delivery === "continuous"))
    .map(({ practice, session, day }) => ({ practice, chair: String(session.chair), day }));
  const distinct = new Map(
    days.map((one) => [`${one.practice}/${one.chair}/${one.day}`, one] as const),
  );
  return [...distinct].map(([id, one]) => {
    const rows = records.upkeep.filter(
      (row) =>
        row.task === task &&
        row.practice === one.practice &&
        row.chair === one.chair &&
        row.day === one.day,
    );
    return { id, ...one, state: stateOf(rows, passes) };
  });
}

/**
 * Every device of the chair must pass, so one that fails outweighs one not recorded, and that one
 * that passes. A device out of service is left out, the day with it only where all are.
 */
function stateOf(rows: readonly Values[], passes: (row: Values) => boolean | undefined): State {
  if (rows.length === 0) return notRecorded;
  const inService = rows.filter((row) => row.status !== "out-of-service");
  if (inService.length === 0) return { excluded: "out-of-service" };
  const passed = inService.map(passes);
  if (passed.includes(false)) return { yes: false };
  return passed.includes(undefined) ? notRecorded : { yes: true };
}
