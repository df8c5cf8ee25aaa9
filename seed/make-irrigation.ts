import { loggedTime } from "./calendar";
import type { CanalWork } from "./make-canals";
import { type Random, rounded } from "./random";
import type { Row } from "./rows";
import type { Visit } from "./visit";

/** The deliveries of a visit, canal by canal, then those written down for the whole tooth. */
export function makeIrrigation(visit: Visit, works: readonly CanalWork[], draw: Random): Row[] {
  const rows: Row[] = [];
  let earlier = 0;
  for (const work of works) {
    const own: Row[] = [];
    const add = (row: Row) =>
      own.push({ session_id: visit.id, canal: work.canal.name, seq: own.length + 1, ...row });
    if (work.preparation === "oscillating") {
      add(continuous(visit, work, earlier, draw));
      earlier += work.pumpSeconds;
    } else if (work.preparation !== "none") {
      add(syringe(visit, draw, { irrigant: "naocl", ml: 11, seconds: 125 }));
    }
    finalRinse(visit, work, draw).forEach(add);
    rows.push(...own);
  }
  if (works.length > 1 && draw.chance(0.12)) {
    rows.push({
      session_id: visit.id,
      seq: 1,
      ...syringe(visit, draw, { irrigant: "saline", ml: 6, seconds: 40 }),
    });
  }
  return rows;
}

function continuous(visit: Visit, work: CanalWork, earlier: number, draw: Random): Row {
  const flow = (visit.flow ?? 6) * draw.normal(1, 0.025);
  const row = {
    irrigant: "naocl",
    concentration_pct: 3,
    dwell_s: 0,
    delivery: "continuous",
    activation: "none",
  };
  if (visit.practice.basis === "metered") {
    // One pump log in three hundred has lost its last seconds.
    const lost = draw.chance(0.003) ? 0.7 : 1;
    return {
      ...row,
      started_at: loggedTime(visit.practice, visit.day, visit.start * 60 + 900 + earlier * 2),
      volume_ml: rounded((flow * work.pumpSeconds * lost) / 60, 1),
      flow_ml_min: rounded(flow, 2),
      duration_s: work.pumpSeconds,
      basis: "metered",
    };
  }
  // A timer that was not reset still holds the earlier canals; the pump's setting stands for the flow.
  const read = work.timerReset === "no" ? work.pumpSeconds + earlier : work.pumpSeconds;
  return {
    ...row,
    flow_ml_min: visit.flow,
    duration_s: draw.chance(0.985) ? read : undefined,
    basis: "timer",
  };
}

function finalRinse(visit: Visit, work: CanalWork, draw: Random): Row[] {
  if (work.row.filled !== "yes") {
    return draw.chance(0.25)
      ? [syringe(visit, draw, { irrigant: "saline", ml: 2, seconds: 20 })]
      : [];
  }
  const rinse: Row[] = [];
  if (draw.chance(0.93)) {
    const acid = draw.chance(0.97) ? "edta" : "citric-acid";
    rinse.push(syringe(visit, draw, { irrigant: acid, ml: 2.6, seconds: 35, dwell: 55 }));
  }
  rinse.push(
    syringe(visit, draw, { irrigant: "naocl", ml: 4, seconds: 45, dwell: 30, activate: true }),
  );
  // One clinician ends with chlorhexidine; saline comes between, nearly always.
  if (visit.clinician.code === "S-23" && draw.chance(0.15)) {
    if (draw.chance(0.95))
      rinse.push(syringe(visit, draw, { irrigant: "saline", ml: 2, seconds: 20 }));
    rinse.push(syringe(visit, draw, { irrigant: "chx", ml: 2, seconds: 25 }));
  }
  return rinse;
}

type Delivery = {
  irrigant: string;
  ml: number;
  seconds: number;
  dwell?: number;
  activate?: boolean;
};

const strengths: Readonly<Record<string, number>> = {
  naocl: 3,
  edta: 17,
  "citric-acid": 10,
  chx: 2,
};

function syringe(visit: Visit, draw: Random, delivery: Delivery): Row {
  const { clinician } = visit;
  const negative =
    visit.practice.code === "SPINDLE" && delivery.irrigant === "naocl" && draw.chance(0.12);
  const activated = delivery.activate === true && draw.chance(clinician.activated);
  return {
    irrigant: delivery.irrigant,
    concentration_pct: strengths[delivery.irrigant],
    volume_ml: draw.chance(0.985)
      ? halves(delivery.ml * clinician.volume * draw.logNormal(1, 0.24))
      : undefined,
    duration_s: draw.chance(0.96)
      ? fives(delivery.seconds * clinician.time * draw.logNormal(1, 0.22))
      : undefined,
    dwell_s: delivery.dwell === undefined ? 0 : fives(delivery.dwell * draw.logNormal(1, 0.3)),
    basis: "noted",
    delivery: negative ? "negative-pressure" : "syringe",
    activation: activated ? draw.weighted({ ultrasonic: 60, sonic: 35, manual: 5 }) : "none",
    activation_s: activated ? draw.pick([20, 20, 30, 40, 60]) : undefined,
    tip_short_mm: negative
      ? 0
      : draw.chance(0.9)
        ? draw.weighted({ "1": 25, "2": 50, "3": 18, "4": 7 })
        : undefined,
  };
}

/** People note half millilitres and five seconds. */
function halves(ml: number): number {
  return Math.max(0.5, Math.round(ml * 2) / 2);
}

function fives(seconds: number): number {
  return Math.max(5, Math.round(seconds / 5) * 5);
}
