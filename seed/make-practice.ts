import { dayAfter } from "@/lib/records/period";
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

/** All rows of a practice from the scenario's first day to `until`, in the order in which they happened. */
export function makePractice(practice: Practice, until: string): Rows {
  const draw = random(`visits ${practice.code}`);
  const staff = cast.filter((clinician) => clinician.practice === practice.code);
  const due = new Map(staff.map((clinician) => [clinician, [] as Due[]]));
  const shelf: Shelf = { kept: new Map(), taken: 0 };
  const rows = noRows();
  rows.people = staff.filter(({ from }) => (from ?? span.first) <= until).map(personRow);
  rows.upkeep = makeUpkeep(practice, until);
  let count = 0;
  for (const day of openDays(span.first, until)) {
    for (const clinician of staff) {
      const chair = chairOf(clinician, day);
      if (!chair) continue;
      const visits = visitsOn(clinician, draw);
      for (let place = 0; place < visits; place += 1) {
        count += 1;
        const waiting = due.get(clinician) ?? [];
        const visit = makeVisit(
          { practice, clinician, chair, day, place, until, count },
          waiting,
          draw,
        );
        addRows(rows, visit, shelf, draw);
      }
    }
  }
  return rows;
}

type Slot = {
  practice: Practice;
  clinician: Clinician;
  chair: string;
  day: string;
  place: number;
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
    start: 9 * 60 + slot.place * 125 + draw.whole(0, 5) * 5,
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

function personRow({ person, practice, code, from, to, peers }: Clinician): Row {
  return { person, practice, code, from: from ?? span.first, to, peers };
}

function chairOf(clinician: Clinician, day: string): string | undefined {
  if (day < (clinician.from ?? span.first) || day > (clinician.to ?? span.last)) return undefined;
  return clinician.rota[weekday(day)] || undefined;
}

/** Visits on a day; at most four fit. */
function visitsOn(clinician: Clinician, draw: Random): number {
  const slots = 4;
  return Array.from({ length: slots }, () => draw.chance((clinician.pace * pace) / slots)).filter(
    Boolean,
  ).length;
}

/** Brings the scenario to its nine to ten thousand canals. */
const pace = 0.79;
