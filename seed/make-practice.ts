import { dayAfter } from "@/lib/records/period";
import { tableNames } from "@/lib/records/tables";
import { openDays, weekday, writtenTime } from "./calendar";
import { cast } from "./cast";
import type { Clinician } from "./clinician";
import { makeCanals } from "./make-canals";
import { type Course, makeCourse } from "./make-course";
import { makeInstruments } from "./make-instruments";
import { makeIrrigation } from "./make-irrigation";
import { makeExceptions, makeIncidents, makeSteps } from "./make-steps";
import { makeUpkeep } from "./make-upkeep";
import { type Random, random } from "./random";
import { noRows, type Row, type Rows } from "./rows";
import { chairs, findings, type Practice, span } from "./scenario";
import type { Shelf } from "./shelf";
import type { Visit } from "./visit";
import { writtenTooth } from "./written-tooth";

type Due = { readonly course: Course; readonly from: string };

/** How much of the scenario is made: its days, both included, and how busy they are. */
export type Extent = {
  readonly first: string;
  readonly last: string;
  /** Visits of a day as a multiple of the scenario's own, and how many fit into it. */
  readonly times: number;
  readonly slots: number;
};

/** All rows of a practice from the scenario's first day to `until`, in the order in which they happened. */
export function makePractice(practice: Practice, until: string): Rows {
  const extent = { first: span.first, last: until, times: 1, slots: 4 };
  const rows = placeRows(practice, extent);
  for (const some of visitRows(practice, extent))
    for (const table of tableNames) rows[table].push(...some[table]);
  return rows;
}

/** What hangs on no visit: who is who, and upkeep. */
export function placeRows(practice: Practice, extent: Extent): Rows {
  const rows = noRows();
  rows.people = staffOf(practice)
    .filter(({ from }) => (from ?? extent.first) <= extent.last)
    .map((clinician) => personRow(clinician, extent));
  rows.upkeep = makeUpkeep(practice, extent);
  return rows;
}

/** The rows of each visit, one visit after the other. */
export function* visitRows(practice: Practice, extent: Extent): Generator<Rows> {
  const draw = random(`visits ${practice.code}`);
  const staff = staffOf(practice);
  const due = new Map(staff.map((clinician) => [clinician, [] as Due[]]));
  const shelf: Shelf = { kept: new Map(), taken: 0 };
  let count = 0;
  for (const day of openDays(extent.first, extent.last)) {
    for (const clinician of staff) {
      const chair = chairOf(clinician, day, extent);
      if (!chair) continue;
      const visits = visitsOn(clinician, extent, draw);
      for (let place = 0; place < visits; place += 1) {
        count += 1;
        const start = 9 * 60 + Math.floor((place * 500) / extent.slots);
        const slot = { practice, clinician, chair, day, start, until: extent.last, count };
        const visit = makeVisit(slot, due.get(clinician) ?? [], draw);
        const rows = noRows();
        addRows(rows, visit, shelf, draw);
        yield rows;
      }
    }
  }
}

function staffOf(practice: Practice): Clinician[] {
  return cast.filter((clinician) => clinician.practice === practice.code);
}

type Slot = {
  practice: Practice;
  clinician: Clinician;
  chair: string;
  day: string;
  /** Minutes after local midnight, before the few by which visits begin later. */
  start: number;
  until: string;
  count: number;
};

function makeVisit(slot: Slot, waiting: Due[], draw: Random): Visit {
  const { practice, clinician, chair, day, count } = slot;
  const ready = waiting.findIndex(({ from }) => from <= day);
  const [second] = ready < 0 ? [] : waiting.splice(ready, 1);
  // One patient in eight has been here before.
  const known = count > 40 && draw.chance(0.12);
  const patient = `${practice.code.toLowerCase()}-pt-${known ? draw.whole(1, count - 1) : count}`;
  const caseId = `${practice.visits}K${count}`;
  const course = second?.course ?? makeCourse(clinician, caseId, patient, draw);
  const twoVisits =
    !second && ["primary", "retreatment"].includes(course.treatment) && draw.chance(0.2);
  const outcome = draw.chance(0.014) ? "abandoned" : twoVisits ? "continuing" : "completed";
  if (outcome === "continuing") waiting.push({ course, from: dayAfter(day, draw.whole(7, 24)) });
  const base = chairs.find(({ code }) => code === chair)?.flow;
  const { pumpChange } = findings;
  const flow = chair === pumpChange.chair && day >= pumpChange.from ? pumpChange.flow : base;
  return {
    id: `${practice.visits}${String(count).padStart(4, "0")}`,
    practice,
    clinician,
    chair,
    flow,
    day,
    start: slot.start + draw.whole(0, 5) * 5,
    course,
    outcome,
    second: second !== undefined,
    until: slot.until,
  };
}

function addRows(rows: Rows, visit: Visit, shelf: Shelf, draw: Random): void {
  const works = makeCanals(visit, draw);
  const { instruments, followups } = makeInstruments(visit, works, shelf, draw);
  rows.sessions.push(sessionRow(visit, draw));
  rows.canals.push(...works.map(({ row }) => row));
  rows.irrigation.push(...makeIrrigation(visit, works, draw));
  rows.instruments.push(...instruments);
  rows.followups.push(...followups);
  rows.steps.push(...makeSteps(visit, works, draw));
  rows.exceptions.push(...makeExceptions(visit, works, draw));
  rows.incidents.push(...makeIncidents(visit, draw));
}

function sessionRow(visit: Visit, draw: Random): Row {
  const { practice, clinician, course, day, start } = visit;
  const minutes = 35 + course.canals.length * draw.whole(8, 16);
  return {
    session_id: visit.id,
    practice: practice.code,
    chair: visit.chair,
    clinician: clinician.code,
    supervisor: clinician.supervisor,
    patient: course.patient,
    case_id: course.caseId,
    started_at: writtenTime(practice, day, start),
    ended_at: draw.chance(0.97) ? writtenTime(practice, day, start + minutes) : undefined,
    tooth: writtenTooth(course.tooth, practice.notation),
    tooth_notation: practice.notation,
    treatment: course.treatment,
    pulp: course.pulp,
    difficulty: draw.chance(0.9) ? course.difficulty : undefined,
    outcome: visit.outcome,
  };
}

function personRow(clinician: Clinician, { first }: Extent): Row {
  const { person, practice, code, from, to, peers } = clinician;
  return { person, practice, code, from: from ?? first, to, peers };
}

function chairOf(clinician: Clinician, day: string, extent: Extent): string | undefined {
  if (day < (clinician.from ?? extent.first) || day > (clinician.to ?? extent.last))
    return undefined;
  return clinician.rota[weekday(day)] || undefined;
}

/** Visits on a day; no more than fit. */
function visitsOn(clinician: Clinician, { times, slots }: Extent, draw: Random): number {
  const chance = (clinician.pace * pace * times) / slots;
  return Array.from({ length: slots }, () => draw.chance(chance)).filter(Boolean).length;
}

/** Brings the scenario to its nine to ten thousand canals. */
const pace = 0.79;
