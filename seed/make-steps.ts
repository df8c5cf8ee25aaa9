import type { CanalWork } from "./make-canals";
import type { Random } from "./random";
import type { Row } from "./rows";
import type { Visit } from "./visit";

/** The protocol steps of a visit; a step that was not written down has no row. */
export function makeSteps(visit: Visit, works: readonly CanalWork[], draw: Random): Row[] {
  const rows: Row[] = [];
  const add = (step: string, status: string, reason?: string) =>
    rows.push({ session_id: visit.id, step, status, reason });
  if (draw.chance(visit.clinician.damWritten)) {
    if (draw.chance(0.008)) add("dam", "excepted", draw.pick(["not-possible", "patient-declined"]));
    else if (draw.chance(0.004)) add("dam", "not-applicable");
    else add("dam", done(draw.chance(visit.clinician.dam)));
  }
  const kinds = new Set(works.map(({ preparation }) => preparation));
  if (kinds.has("oscillating") && draw.chance(0.96)) add("line-check", done(draw.chance(0.97)));
  const torque = kinds.has("rotary") || kinds.has("reciprocating");
  if (torque && draw.chance(0.92))
    add("torque-calibration", draw.chance(0.2) ? "not-applicable" : done(draw.chance(0.95)));
  if (kinds.has("oscillating") && !torque) add("torque-calibration", "not-applicable");
  const powered = torque || kinds.has("oscillating");
  if (powered && draw.chance(0.95)) add("patency", done(draw.chance(0.95)));
  if (powered && draw.chance(0.94)) add("handpiece-care", done(draw.chance(0.96)));
  if (visit.course.treatment === "retreatment" && !visit.second)
    add("filling-removed", done(draw.chance(0.97)));
  return rows;
}

/** Why a criterion was rightly not met, where somebody entered it. */
export function makeExceptions(visit: Visit, works: readonly CanalWork[], draw: Random): Row[] {
  const entered = { entered_by: visit.clinician.code };
  return works
    .filter(({ timerReset }) => timerReset === "no" && draw.chance(0.22))
    .map(({ canal }) => ({
      session_id: visit.id,
      canal: canal.name,
      criterion: "timer-reset",
      reason: draw.pick(["equipment-failure", "equipment-failure", "emergency-interrupted"]),
      ...entered,
    }));
}

/** What went wrong at the visit; rare. */
export function makeIncidents(visit: Visit, draw: Random): Row[] {
  if (!draw.chance(0.005)) return [];
  const kind = draw.weighted({
    extrusion: 55,
    perforation: 30,
    allergy: 10,
    "swallowed-or-inhaled": 5,
  });
  return [
    {
      session_id: visit.id,
      kind,
      patient_told: draw.chance(0.95) ? "yes" : undefined,
      reported: draw.chance(0.85) ? "yes" : "no",
    },
  ];
}

function done(it: boolean): string {
  return it ? "done" : "not-done";
}
