import type { MetCounts, OpportunityTally } from "@/lib/measures/opportunities";
import type { Subject } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import { criterionUnits, type Limits } from "./criteria/criteria";
import { grouped } from "./grouped";
import type { Records } from "./records";
import { bySubject } from "./subjects";
import { clinicianOf, type Unit } from "./unit";
import { type Visit, visitsOf } from "./visit";

/** An opportunity, as a unit of the visit and its clinician. */
type Opportunity = Unit & {
  readonly criterion: string;
  readonly met: boolean;
  /** Not met, and none of its units is known not to be. */
  readonly unrecorded: boolean;
  readonly byClinician: boolean;
};

/** Criteria of steps and equipment that staff share: they are not shown by clinician. */
const ofTheHouse: readonly string[] = ["line-check", "torque-calibration", "handpiece-care"];

/**
 * Opportunities counted in the plain, slow, obvious way: for each visit and criterion the units that are neither left out
 * nor excepted; met when all of them are. Held equal to the counts of the store on random records.
 */
export function plainOpportunities(
  records: Records,
  asked: {
    readonly period: Period;
    readonly by: readonly ("group" | "practice" | "clinician")[];
    /** Ids of the criteria that count. */
    readonly criteria: readonly string[];
    readonly limits?: Limits;
  },
): OpportunityTally[] {
  const { period, by, criteria, limits } = asked;
  const within = visitsOf(records).filter(({ day }) => period.from <= day && day < period.until);
  const all = criteria.flatMap((criterion) => {
    const units = criterionUnits(records, criterion, limits) ?? [];
    return within.flatMap((visit) => opportunityAt(records, visit, criterion, units));
  });
  return by.flatMap((kind) =>
    bySubject(kind === "clinician" ? all.filter((one) => one.byClinician) : all, kind).map(
      ({ subject, units }) => tallyOf(subject, period, units, criteria),
    ),
  );
}

function opportunityAt(
  records: Records,
  visit: Visit,
  criterion: string,
  units: readonly Unit[],
): Opportunity[] {
  const eligible = units.filter(
    ({ practice, session, state }) =>
      practice === visit.practice &&
      session === String(visit.session.session_id) &&
      !("excluded" in state) &&
      !("excepted" in state),
  );
  if (eligible.length === 0) return [];
  return [
    {
      id: `${criterion} ${visit.practice} ${visit.session.session_id}`,
      practice: visit.practice,
      session: `${visit.practice} ${visit.session.session_id}`,
      chair: String(visit.session.chair),
      day: visit.day,
      clinician: clinicianOf(records, visit, undefined),
      state: { yes: true },
      criterion,
      met: eligible.every(({ state }) => "yes" in state && state.yes),
      unrecorded:
        eligible.some(({ state }) => "notRecorded" in state) &&
        !eligible.some(({ state }) => "yes" in state && !state.yes),
      byClinician: !ofTheHouse.includes(criterion),
    },
  ];
}

function tallyOf(
  subject: Subject,
  period: Period,
  all: readonly Opportunity[],
  criteria: readonly string[],
): OpportunityTally {
  const visits = [...grouped(all, ({ session }) => session).values()].map((some) => ({
    ...countsOf(some),
    missed: some.some(({ met, unrecorded }) => !met && !unrecorded),
  }));
  const sum = (of: (one: MetCounts) => number) => visits.reduce((total, one) => total + of(one), 0);
  return {
    subject,
    period,
    opportunities: countsOf(all),
    visits: {
      met: visits.filter(({ met, of }) => met === of).length,
      of: visits.length,
      notRecorded: visits.filter(({ met, of, missed }) => met < of && !missed).length,
    },
    clusters: {
      clusters: visits.length,
      events: sum(({ met }) => met),
      units: sum(({ of }) => of),
      eventsSquared: sum(({ met }) => met * met),
      eventsByUnits: sum(({ met, of }) => met * of),
      unitsSquared: sum(({ of }) => of * of),
    },
    byCriterion: criteria.flatMap((criterion) => {
      const some = all.filter((one) => one.criterion === criterion);
      return some.length === 0 ? [] : [{ criterion, ...countsOf(some) }];
    }),
  };
}

function countsOf(some: readonly Opportunity[]): MetCounts {
  return {
    met: some.filter(({ met }) => met).length,
    of: some.length,
    notRecorded: some.filter(({ unrecorded }) => unrecorded).length,
  };
}
