import type { Records } from "../records";
import { type Clinician, clinicianOf } from "../unit";
import { anyHeld, type Canal, type Visit } from "../visit";
import { type Delivery, ownDeliveries, unknownDelivery, wholeToothDeliveries } from "./deliveries";

/** Days after which visits without a common number of the case are no longer one course. */
const courseDays = 180;

/** The canal at a visit of its course. */
export type Stage = { readonly visit: Visit; readonly canal: Canal };

/**
 * The visits of the course that ends with this one, at which the canal has a row: of the same practice, patient and
 * tooth, no later than this one, later than the last visit before it at which the canal was filled.
 */
export function courseOf(visits: readonly Visit[], last: Visit, name: unknown): Stage[] {
  const sameTooth = visits.filter(
    (one) =>
      one.practice === last.practice &&
      one.session.patient === last.session.patient &&
      one.session.tooth === last.session.tooth,
  );
  const fillings = sameTooth
    .filter((one) => start(one) < start(last))
    .filter((one) => one.canals.some(({ row }) => row.canal === name && row.filled === true))
    .map(start);
  const filledBefore = Math.max(Number.NEGATIVE_INFINITY, ...fillings);
  return sameTooth
    .filter((one) => start(one) <= start(last) && start(one) > filledBefore)
    .filter((one) => belongs(one, last))
    .flatMap((visit) =>
      visit.canals.filter(({ row }) => row.canal === name).map((canal) => ({ visit, canal })),
    );
}

/** All that may have been delivered into the canal in the course; whole-tooth notes where they were written. */
export function courseDeliveries(course: readonly Stage[]): Delivery[] {
  const own = course.flatMap(({ canal }) => ownDeliveries(canal));
  const noted = course.flatMap(({ visit }) => wholeToothDeliveries(visit));
  const held = course.some(({ canal }) => anyHeld(canal.held, "irrigation"));
  return [...own, ...noted, ...(own.length === 0 || held ? [unknownDelivery] : [])];
}

/**
 * Everyone else than `own` who worked on the canal in the course, each once; whoever did so under several codes is
 * named by the first of them in order.
 */
export function othersInCourse(
  records: Records,
  course: readonly Stage[],
  own: Clinician | undefined,
): Clinician[] {
  const all = course.map(({ visit, canal }) => clinicianOf(records, visit, canal));
  const byCode = all
    .filter(({ key }) => key !== own?.key)
    .sort((one, other) => (one.code < other.code ? -1 : 1));
  return byCode.filter(({ key }, place) => byCode.findIndex((one) => one.key === key) === place);
}

function belongs({ session, day }: Visit, last: Visit): boolean {
  const [one, other] = [session.case_id, last.session.case_id];
  if (one !== undefined && other !== undefined) return one === other;
  return (Date.parse(last.day) - Date.parse(day)) / 86_400_000 <= courseDays;
}

function start({ session }: Visit): number {
  return Date.parse(String(session.started_at));
}
