import type { Records } from "../records";
import { canalExclusion } from "../treatment-population";
import { type Unit, unitOf } from "../unit";
import { type Canal, type Visit, visitsOf } from "../visit";
import { courseDeliveries, courseOf, othersInCourse } from "./course";
import { canalDeliveries, type Delivery, ownDeliveries } from "./deliveries";
import { canalUnits, judged } from "./judged";
import { all, any, atLeast, atMost, is, type Truth } from "./kleene";
import { openApex, primaryTooth } from "./left-out";
import { exceptionOf } from "./steps-and-exceptions";
import { reaches } from "./total";

const hypochlorite = ({ irrigant }: Delivery) => is(irrigant, "naocl");

/** Canals, by whether hypochlorite was the main irrigant and all of it in the band of 0.5 to 6 %. */
export function mainIrrigant(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) =>
    judged({
      member: true,
      outside: canalExclusion(visit, canal),
      met: all([is(mainOf(canal), "naocl"), ...canalDeliveries(visit, canal).map(inBand)]),
      excepted: exceptionOf("main-irrigant", visit, canal),
    }),
  );
}

/** Hypochlorite lies in the band; anything else needs not. */
function inBand(delivery: Delivery): Truth {
  if (hypochlorite(delivery) === false) return true;
  const { concentration } = delivery;
  return all([atLeast(concentration, 0.5), atMost(concentration, 6)]);
}

/** The irrigant of largest known volume: hypochlorite where several are largest, else the first by name. */
function mainOf(canal: Canal): string | undefined {
  const sums = new Map<string, number>();
  for (const { irrigant = "", volume = 0 } of ownDeliveries(canal)) {
    sums.set(irrigant, (sums.get(irrigant) ?? 0) + volume);
  }
  const largest = Math.max(0, ...sums.values());
  if (largest === 0) return undefined;
  const those = [...sums.keys()].filter((irrigant) => sums.get(irrigant) === largest).sort();
  return those.includes("naocl") ? "naocl" : those[0];
}

/** Canals filled, by whether 10 mL of hypochlorite or more came into them in the course. */
export function hypochloriteFloor(records: Records): Unit[] {
  return courseUnits(records, "hypochlorite-floor", (deliveries) =>
    reaches(10, deliveries, hypochlorite, ({ volume }) => [volume]),
  );
}

/** Canals filled, by whether EDTA of 15 to 17 % flowed or stood in them for 60 s or more in the course. */
export function chelator(records: Records): Unit[] {
  const strongEnough = ({ irrigant, concentration }: Delivery) =>
    all([is(irrigant, "edta"), atLeast(concentration, 15), atMost(concentration, 17)]);
  return courseUnits(records, "chelator", (deliveries) =>
    reaches(60, deliveries, strongEnough, ({ time, dwell }) => [time, dwell]),
  );
}

/** Canals filled, by whether hypochlorite and EDTA were activated for so many seconds at the visit. */
export function activationFor(records: Records, seconds: number): Unit[] {
  const counts = (delivery: Delivery) =>
    any([hypochlorite(delivery), is(delivery.irrigant, "edta")]);
  return canalUnits(records, (visit, canal) =>
    judged({
      member: isFilled(canal),
      outside: canalExclusion(visit, canal),
      met: reaches(seconds, canalDeliveries(visit, canal), counts, ({ activated }) => [activated]),
      excepted: exceptionOf("activation", visit, canal),
    }),
  );
}

/** A unit of the visit at which the canal was filled, and of everyone who worked on it in the course. */
function courseUnits(
  records: Records,
  criterion: string,
  met: (deliveries: readonly Delivery[]) => Truth,
): Unit[] {
  const visits = visitsOf(records);
  const unit = (visit: Visit, canal: Canal): Unit[] => {
    const course = courseOf(visits, visit, canal.row.canal);
    const state = judged({
      member: isFilled(canal),
      outside: canalExclusion(visit, canal),
      left: [primaryTooth(visit), openApex(canal)],
      met: met(courseDeliveries(course)),
      excepted: exceptionOf(criterion, visit, canal),
    });
    if (!state) return [];
    const own = unitOf(records, visit, canal, state);
    return [{ ...own, also: othersInCourse(records, course, own.clinician) }];
  };
  return visits.flatMap((visit) => visit.canals.flatMap((canal) => unit(visit, canal)));
}

export function isFilled({ row }: Canal): Truth {
  return is(row.filled, true);
}
