import { type Random, random, rounded } from "@/seed/random";

/** A visit of two invented practices, as plain facts; the files of the third shape are written from these. */
export type Visit = {
  id: string;
  site: "A" | "B";
  /** The same two names in both practices. */
  chair: "F1" | "F2";
  clinician: string;
  patient: string;
  /** Milliseconds since 1970. */
  start: number;
  end: number;
  quadrant: "UR" | "UL" | "LL" | "LR";
  position: number;
  treatment: "primary" | "retreatment" | "emergency";
  outcome: "completed" | "continuing" | "abandoned";
  difficulty: "low" | "moderate" | "high" | undefined;
  dam: "done" | "not-done" | "not-applicable" | "excepted" | undefined;
  canals: Canal[];
};
export type Canal = {
  name: string;
  lengthMm: number | undefined;
  method: "locator" | "radiograph" | "both" | undefined;
  technique: "rotary" | "reciprocating" | "hand";
  preparationS: number | undefined;
  reset: "yes" | "no" | "no-timer" | undefined;
  filled: boolean;
  files: number;
  separated: number;
};
/** What a pump wrote; without a visit's number. */
export type Delivery = {
  site: "A" | "B";
  chair: "F1" | "F2";
  at: number;
  /** The visit that it belongs to, and the canal; undefined for one that belongs to none. */
  visit: Visit | undefined;
  canal: string;
  toothWritten: boolean;
  irrigant: "naocl" | "edta" | "saline" | "other";
  strengthPct: number | undefined;
  volumeMl: number | undefined;
  flowMlMin: number | undefined;
  durationS: number;
  dwellS: number | undefined;
  delivery: "continuous" | "syringe" | "negative-pressure";
};

const minute = 60_000;
const canalsOf = { 6: ["MB1", "MB2", "DB", "P"], 4: ["B", "P"], 1: ["main"] } as const;

/** Two weeks of visits, over the night in which the clocks of Paris went back, and what the pumps wrote. The same in every run. */
export function inventedVisits(): { visits: Visit[]; deliveries: Delivery[] } {
  const draw = random("third shape");
  const visits: Visit[] = [];
  for (const day of [19, 20, 21, 22, 23, 26, 27, 28, 29, 30])
    for (const site of ["A", "B"] as const)
      for (const chair of ["F1", "F2"] as const) {
        // Paris was two hours ahead of UTC until 25 October 2026, and one since.
        let at = Date.UTC(2026, 9, day, day < 25 ? 6 : 7, 30);
        for (let number = 0; number < 4; number += 1) {
          const start = at + draw.pick([0, 0, 5, 15]) * minute;
          const end = start + draw.whole(35, 75) * minute;
          const first = visit(draw, visits.length + 1, { site, chair, start, end });
          visits.push(first);
          // Two teeth of a patient at one sitting are two visits at the same time.
          if (draw.chance(0.12)) {
            const { patient, clinician, position } = first;
            const second = visit(draw, visits.length + 1, { site, chair, start, end });
            const other = position === 6 ? 4 : 6;
            visits.push({ ...second, patient, clinician, ...teeth(draw, other) });
          }
          at = end;
        }
      }
  return { visits, deliveries: deliveriesOf(draw, visits) };
}

type Sitting = Pick<Visit, "site" | "chair" | "start" | "end">;

function visit(draw: Random, number: number, sitting: Sitting): Visit {
  return {
    id: `S-${String(number).padStart(4, "0")}`,
    ...sitting,
    clinician: `${sitting.site}-${draw.pick(["01", "02"])}`,
    patient: `dossier-${draw.whole(1, 400)}`,
    treatment: draw.weighted({ primary: 7, retreatment: 2, emergency: 1 }),
    outcome: draw.weighted({ completed: 6, continuing: 3, abandoned: 1 }),
    difficulty: maybe(draw, ["low", "moderate", "high"]),
    dam: maybe(draw, ["done", "done", "done", "not-done", "not-applicable", "excepted"]),
    ...teeth(draw, draw.pick([6, 4, 1])),
  };
}

function teeth(draw: Random, position: 6 | 4 | 1): Pick<Visit, "quadrant" | "position" | "canals"> {
  const quadrant = draw.pick(["UR", "UL", "LL", "LR"] as const);
  const canals = canalsOf[position].map((name): Canal => {
    const files = draw.whole(0, 4);
    return {
      name,
      lengthMm: draw.chance(0.9) ? draw.whole(32, 46) / 2 : undefined,
      method: maybe(draw, ["locator", "radiograph", "both"]),
      technique: draw.pick(["rotary", "reciprocating", "hand"]),
      preparationS: draw.chance(0.8) ? draw.whole(2, 16) * 15 : undefined,
      reset: maybe(draw, ["yes", "yes", "no", "no-timer"]),
      filled: draw.chance(0.5),
      files,
      separated: files > 0 && draw.chance(0.05) ? 1 : 0,
    };
  });
  return { quadrant, position, canals };
}

/** One of the items, or nothing, as what was not written down. */
function maybe<Item>(draw: Random, items: readonly Item[]): Item | undefined {
  return draw.chance(0.85) ? draw.pick(items) : undefined;
}

function deliveriesOf(draw: Random, visits: readonly Visit[]): Delivery[] {
  const all: Delivery[] = [];
  for (const visit of visits) {
    const number = visit.canals.length * 3;
    // A pump's clock runs a little after the chart's: the last ones may come after the visit's written end.
    const step = (visit.end + 3 * minute - visit.start) / (number + 1);
    for (let place = 0; place < number; place += 1) {
      const canal = visit.canals[Math.floor(place / 3)] as Canal;
      const at = Math.round((visit.start + step * (place + 1)) / 1000) * 1000;
      all.push({ ...content(draw), ...where(visit), at, visit, canal: canal.name });
    }
  }
  for (const { site, chair, end } of visits.slice(0, 12)) {
    const at = end + 15 * 60 * minute;
    all.push({
      ...content(draw),
      site,
      chair,
      at,
      visit: undefined,
      canal: "P",
      toothWritten: false,
    });
  }
  return all.sort((one, other) => one.at - other.at);
}

const where = ({ site, chair }: Visit) => ({ site, chair });

function content(draw: Random): Omit<Delivery, "site" | "chair" | "at" | "visit" | "canal"> {
  const irrigant = draw.weighted({ naocl: 6, edta: 2, saline: 1, other: 1 });
  const delivery = draw.pick(["continuous", "syringe", "negative-pressure"] as const);
  const syringe = delivery === "syringe";
  const strengths = { naocl: [2.5, 5.25], edta: [17], saline: [0.9], other: [3] }[irrigant];
  return {
    irrigant,
    delivery,
    toothWritten: draw.chance(0.85),
    strengthPct: draw.chance(0.9) ? draw.pick(strengths) : undefined,
    volumeMl: syringe ? rounded(draw.between(1, 6), 1) : undefined,
    flowMlMin: syringe ? undefined : draw.pick([3, 4.5, 6]),
    durationS: draw.whole(10, 240) / 2,
    dwellS: draw.chance(0.3) ? draw.pick([15, 30, 90, 120]) : undefined,
  };
}
