import type { Canal } from "./make-course";
import { type Random, rounded } from "./random";
import type { Row } from "./rows";
import type { Visit } from "./visit";

/** What was done in one canal. */
export type CanalWork = {
  readonly canal: Canal;
  readonly row: Row;
  readonly preparation: "oscillating" | "rotary" | "reciprocating" | "hand" | "none";
  readonly timerReset: string;
  /** Seconds that a pump was on, where the preparation has one. */
  readonly pumpSeconds: number;
};

/** Usual time that irrigant flows while a canal is prepared with a file that carries it, s (invented). */
const usualPumpSeconds = 185;

/** The canals of a visit, in the order in which they are treated. */
export function makeCanals(visit: Visit, draw: Random): CanalWork[] {
  const kind = preparationOf(visit, draw);
  return visit.course.canals.map((canal) => canalWork(visit, canal, kind, draw));
}

function preparationOf(visit: Visit, draw: Random): CanalWork["preparation"] {
  if (visit.second) return draw.chance(0.6) ? "none" : "hand";
  if (visit.course.treatment === "dressing" || visit.course.treatment === "other") return "none";
  if (visit.course.treatment === "emergency") return draw.chance(0.5) ? "hand" : "none";
  const { oscillating, ...others } = visit.clinician.kinds;
  return draw.weighted(visit.flow === undefined || !oscillating ? others : visit.clinician.kinds);
}

function canalWork(
  visit: Visit,
  canal: Canal,
  kind: CanalWork["preparation"],
  draw: Random,
): CanalWork {
  const { clinician, course } = visit;
  const preparation = kind === "oscillating" && draw.chance(0.03) ? "hand" : kind;
  const harder = (1 + canal.curvature / 130) * (course.treatment === "retreatment" ? 1.25 : 1);
  const working = usualPumpSeconds * clinician.time * harder * draw.logNormal(1, 0.27);
  const pumpSeconds = preparation === "oscillating" ? Math.round(working) : 0;
  // Now and then a motor's clock and the pump's disagree: the tool lists such canals under data quality.
  const seconds = working * (draw.chance(0.015) ? 0.8 : draw.between(1.02, 1.3));
  const timerReset = timerOf(visit, preparation, draw);
  const size = draw.pick([25, 25, 30, 30, 35, 40]);
  const written = draw.chance(clinician.length);
  const supervisor =
    clinician.supervisor !== undefined && draw.chance(0.05) ? clinician.supervisor : undefined;
  const row = {
    session_id: visit.id,
    canal: canal.name,
    clinician: supervisor,
    working_length_mm: written || draw.chance(0.5) ? canal.length : undefined,
    length_method: written
      ? draw.weighted({ locator: 70, both: 20, radiograph: 9, estimate: 1 })
      : undefined,
    curvature_deg: draw.chance(0.9) ? canal.curvature : undefined,
    apex: draw.chance(0.96) ? (draw.chance(0.99) ? "closed" : "open") : undefined,
    preparation,
    device: ["hand", "none"].includes(preparation) ? undefined : `${visit.chair}-motor`,
    apical_size: preparation === "none" ? undefined : size,
    taper_pct: preparation === "none" ? undefined : draw.pick([4, 4, 6]),
    preparation_s: preparation === "none" || draw.chance(0.03) ? undefined : Math.round(seconds),
    timer_reset: timerReset === "" ? undefined : timerReset,
    filled: visit.outcome === "completed" && isDefinitive(visit) ? "yes" : "no",
    fragment_on_arrival: course.treatment === "retreatment" && draw.chance(0.02) ? "yes" : "no",
  };
  return {
    canal: { ...canal, length: rounded(canal.length, 1) },
    row,
    preparation,
    timerReset,
    pumpSeconds,
  };
}

function timerOf(visit: Visit, preparation: CanalWork["preparation"], draw: Random): string {
  if (preparation === "none") return "";
  if (preparation === "hand") return "no-timer";
  if (preparation !== "oscillating" && draw.chance(0.3)) return "no-timer";
  if (draw.chance(0.015)) return "";
  return draw.chance(visit.clinician.reset) ? "yes" : "no";
}

function isDefinitive(visit: Visit): boolean {
  return visit.course.treatment === "primary" || visit.course.treatment === "retreatment";
}
