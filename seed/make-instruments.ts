import { dayAfter } from "@/lib/records/period";
import type { CanalWork } from "./make-canals";
import { type Random, rounded } from "./random";
import type { Row } from "./rows";
import { findings } from "./scenario";
import { type Shelf, takeFrom, throwAway } from "./shelf";
import type { Visit } from "./visit";

/** Chance of a separation in an unremarkable canal (invented; about 1 % over all canals). */
const usualSeparation = 0.0072;

type Step = { kind: string; size: number; taper: number };

const sequences: Readonly<Record<string, readonly Step[]>> = {
  oscillating: [
    { kind: "hand", size: 10, taper: 2 },
    { kind: "oscillating", size: 25, taper: 4 },
  ],
  rotary: [
    { kind: "hand", size: 10, taper: 2 },
    { kind: "rotary", size: 20, taper: 4 },
    { kind: "rotary", size: 25, taper: 6 },
  ],
  reciprocating: [
    { kind: "hand", size: 15, taper: 2 },
    { kind: "reciprocating", size: 25, taper: 8 },
  ],
  hand: [{ kind: "hand", size: 25, taper: 2 }],
  none: [],
};

const settings: Readonly<Record<string, Row>> = {
  oscillating: { speed_per_min: 5000 },
  rotary: { speed_per_min: 350, torque_n_cm: 2 },
  reciprocating: { speed_per_min: 300, torque_n_cm: 2.5 },
};

/** The uses of instruments at a visit, and what became later of those that separated. */
export function makeInstruments(
  visit: Visit,
  works: readonly CanalWork[],
  shelf: Shelf,
  draw: Random,
) {
  const instruments: Row[] = [];
  const followups: Row[] = [];
  for (const work of works) {
    const steps = sequences[work.preparation] ?? [];
    steps.forEach((step, place) => {
      const taken = takeFrom(shelf, visit, step.kind, step.size, draw);
      const last = place === steps.length - 1;
      const separated = last && draw.chance(separationChance(visit, work, taken.lot));
      if (separated) throwAway(shelf, visit, step.kind, step.size);
      const seq = place + 1;
      const key = { session_id: visit.id, canal: work.canal.name, seq };
      const event = separated ? separation(work, draw) : undefined;
      instruments.push({
        ...key,
        kind: step.kind,
        ...taken,
        size: step.size,
        taper_pct: step.taper,
        ...settings[step.kind],
        separated: separated ? "yes" : draw.chance(0.006) ? undefined : "no",
        ...event,
      });
      if (event?.management === "pending") followups.push(...laterNews(visit, key, draw));
    });
  }
  return { instruments, followups };
}

function separationChance(visit: Visit, work: CanalWork, lotUsed: Row[string]): number {
  const { curvature } = work.canal;
  const curved = curvature <= 5 ? 0.5 : curvature <= 20 ? 1 : 2.2;
  const lot = lotUsed === findings.weakLot.lot ? findings.weakLot.times : 1;
  const kind = work.preparation === "hand" ? 0.4 : 1;
  return (
    usualSeparation *
    curved *
    lot *
    kind *
    (visit.course.molar ? 1.2 : 0.8) *
    visit.clinician.separation
  );
}

function separation(work: CanalWork, draw: Random): Row {
  const third = draw.weighted(
    work.canal.curvature > 20
      ? { apical: 75, middle: 23, beyond: 2 }
      : { apical: 55, middle: 33, coronal: 12 },
  );
  return {
    third,
    fragment_mm: rounded(draw.between(1, 5), 1),
    management: draw.weighted(
      third === "coronal"
        ? { retrieved: 9, bypassed: 1 }
        : { retrieved: 25, bypassed: 25, retained: 20, referred: 8, pending: 22 },
    ),
    patient_told: draw.chance(0.94) ? "yes" : draw.chance(0.4) ? "no" : undefined,
  };
}

function laterNews(visit: Visit, key: Row, draw: Random): Row[] {
  const day = dayAfter(visit.day, draw.whole(9, 70));
  if (day > visit.until || draw.chance(0.2)) return [];
  return [
    {
      ...key,
      day,
      management: draw.pick(["bypassed", "retained", "referred", "retrieved"]),
      patient_told: "yes",
    },
  ];
}
