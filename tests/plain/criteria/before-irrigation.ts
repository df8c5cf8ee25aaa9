import type { Records } from "../records";
import { canalExclusion } from "../treatment-population";
import type { State, Unit } from "../unit";
import type { Canal, Visit } from "../visit";
import { canalUnits, judged, visitUnits } from "./judged";
import { any, is, known } from "./kleene";
import { openApex, primaryTooth } from "./left-out";
import { isPowered } from "./powered";
import { exceptionOf, statusOf } from "./steps-and-exceptions";

/** Visits, by the visit's own dam step; a step or an exception that names a canal says nothing of the visit. */
export function isolation(records: Records): Unit[] {
  return visitUnits(records, (visit) => {
    const dam = statusOf(visit, undefined, "dam");
    return judged({
      member: true,
      left: [
        ["abandoned", visit.session.outcome === "abandoned"],
        ["not-applicable", is(dam, "not-applicable")],
      ],
      met: is(dam, "done"),
      excepted: exceptionOf("isolation", visit, undefined, ["dam"]),
    });
  });
}

/** Canals, by whether the working length and how it was found are there; never not recorded, and without exceptions. */
export function lengthRecorded(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const { working_length_mm: length, length_method: method } = canal.row;
    return judged({
      member: true,
      outside: canalExclusion(visit, canal),
      met: length !== undefined && method !== undefined,
    });
  });
}

/** Canals prepared by a motor, by how the length was found; the steps speak only where the canal says nothing. */
export function lengthConfirmed(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) =>
    judged({
      member: isPowered(canal.row.preparation),
      outside: canalExclusion(visit, canal),
      left: [primaryTooth(visit), openApex(canal)],
      met: confirmed(visit, canal),
      excepted: exceptionOf("length-confirmed", visit, canal, ["apex-locator"]),
    }),
  );
}

function confirmed(visit: Visit, canal: Canal): boolean | undefined {
  const method = canal.row.length_method;
  if (method !== undefined) return method !== "estimate";
  const done = ["apex-locator", "length-radiograph"].some(
    (step) => statusOf(visit, canal, step) === "done",
  );
  // That neither step was done leaves open how the length was found.
  return done ? true : undefined;
}

/** Canals prepared by a motor, by whether patency was confirmed or a glide path made. */
export function patency(records: Records): Unit[] {
  return canalUnits(records, (visit, canal): State | undefined => {
    const done = (step: string) => is(statusOf(visit, canal, step), "done");
    return judged({
      member: isPowered(canal.row.preparation),
      outside: canalExclusion(visit, canal),
      left: [
        ["filling-not-removed", known(is(statusOf(visit, canal, "filling-removed"), "not-done"))],
      ],
      met: any([done("patency"), done("glide-path")]),
      excepted: exceptionOf("patency", visit, canal, ["patency", "glide-path"]),
    });
  });
}
