import type { Records } from "../records";
import type { Unit } from "../unit";
import type { Visit } from "../visit";
import { judged, visitUnits } from "./judged";
import { is } from "./kleene";
import { isPoweredVisit } from "./powered";
import { exceptionOf, statusOf } from "./steps-and-exceptions";

/** Visits with a continuous delivery, by whether the irrigation line was checked. "Not applicable" is no answer there. */
export function lineCheck(records: Records): Unit[] {
  return together(records, "line-check", ({ deliveries }) =>
    deliveries.some((one) => one.delivery === "continuous"),
  );
}

/** Visits at which a motor was used, by whether its torque was calibrated. */
export function torqueCalibration(records: Records): Unit[] {
  return together(records, "torque-calibration", isPoweredVisit, true);
}

/** Visits at which a motor was used, by whether the handpiece was cared for. */
export function handpieceCare(records: Records): Unit[] {
  return together(records, "handpiece-care", isPoweredVisit);
}

/** By the visit's own step of the criterion's name. It is the work of all, so of no one clinician. */
function together(
  records: Records,
  id: string,
  member: (visit: Visit) => boolean,
  leftOutWhenNotApplicable = false,
): Unit[] {
  const units = visitUnits(records, (visit) => {
    const status = statusOf(visit, undefined, id);
    return judged({
      member: member(visit),
      left: leftOutWhenNotApplicable ? [["not-applicable", is(status, "not-applicable")]] : [],
      met: is(status, "done"),
      excepted: exceptionOf(id, visit, undefined, [id]),
    });
  });
  return units.map(({ clinician: _, ...unit }) => unit);
}
