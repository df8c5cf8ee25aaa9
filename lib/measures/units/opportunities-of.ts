import type { Period } from "@/lib/records/period";
import type { OpportunityTally } from "../opportunities";
import type { SubjectKind } from "../tally";
import type { MonthUnits } from "./alike";
import { inOrder, subjectOf } from "./subjects";

type Kind = Exclude<SubjectKind, "chair">;

/** What an opportunity is known to be, in bits. */
const [there, unmet, missed, someones] = [1, 2, 4, 8] as const;

type Sums = {
  kind: Kind;
  key: string;
  codes: Set<string>;
  practices: Map<string, Set<string>>;
  visits: { met: number; of: number; notRecorded: number };
  clusters: {
    events: number;
    units: number;
    eventsSquared: number;
    eventsByUnits: number;
    unitsSquared: number;
  };
  byCriterion: Map<number, { met: number; of: number; notRecorded: number }>;
};

/**
 * Opportunities by group, practice or clinician for each period, from the units of months: a criterion's units at a visit are one,
 * met when all are. `criteria` are those that overall scores count, as measures, in page order.
 */
export function opportunitiesOf(
  months: readonly MonthUnits[],
  asked: {
    readonly criteria: readonly { readonly id: string; readonly measure: string }[];
    readonly periods: readonly Period[];
    readonly by: readonly Kind[];
  },
): OpportunityTally[] {
  return asked.periods.flatMap((period) => {
    const found = new Map<string, Sums>();
    for (const month of months)
      if (month.month >= period.from && month.month < period.until)
        addMonth(
          found,
          month,
          asked.criteria.map(({ measure }) => measure),
          asked.by,
        );
    return inOrder([...found.values()]).map((sums) => tallyOf(sums, period, asked.criteria));
  });
}

function addMonth(
  found: Map<string, Sums>,
  month: MonthUnits,
  measures: readonly string[],
  by: readonly Kind[],
): void {
  const states = measures.map((measure) => statesOf(month, measure));
  const { by: places = [], whose = [] } = month.visits ?? {};
  places.forEach((place, visit) => {
    const [, clinician, worker] = whose[place] ?? ["", "", ""];
    for (const kind of by) {
      const own = kind === "clinician";
      const here = states.map((state) => {
        const one = state[visit] ?? 0;
        return own && !(one & someones) ? 0 : one;
      });
      if (!here.some((one) => one & there)) continue;
      const code = own ? clinician : kind === "practice" ? month.practice : null;
      const key = own ? worker : kind === "practice" ? month.practice : "";
      addVisit(sumsOf(found, kind, key, code, month.practice), here);
    }
  });
}

/** Of each visit of the month, what a criterion's units there come to; 0 where there is none. */
function statesOf({ patients, units }: MonthUnits, measure: string): Uint8Array {
  const states = new Uint8Array(patients.length);
  for (const alike of units.get(measure) ?? []) {
    if (alike.shared || alike.excluded !== null || alike.excepted !== null) continue;
    const met = (alike.numerator ?? 0) > 0;
    const state =
      there |
      (met ? 0 : unmet) |
      (met || alike.missing > 0 ? 0 : missed) |
      (alike.worker === null ? 0 : someones);
    for (const visit of alike.visits)
      if (typeof visit === "number") states[visit] = (states[visit] ?? 0) | state;
  }
  return states;
}

function addVisit({ visits, clusters, byCriterion }: Sums, here: readonly number[]): void {
  let [e, u, lost] = [0, 0, false];
  here.forEach((state, place) => {
    if (!(state & there)) return;
    const met = !(state & unmet);
    const gone = (state & missed) > 0;
    u += 1;
    if (met) e += 1;
    if (gone) lost = true;
    const of = byCriterion.get(place) ?? { met: 0, of: 0, notRecorded: 0 };
    byCriterion.set(place, of);
    of.of += 1;
    if (met) of.met += 1;
    else if (!gone) of.notRecorded += 1;
  });
  visits.of += 1;
  if (e === u) visits.met += 1;
  else if (!lost) visits.notRecorded += 1;
  clusters.events += e;
  clusters.units += u;
  clusters.eventsSquared += e * e;
  clusters.eventsByUnits += e * u;
  clusters.unitsSquared += u * u;
}

function sumsOf(
  found: Map<string, Sums>,
  kind: Kind,
  key: string,
  code: string | null,
  practice: string,
): Sums {
  const name = `${kind}\n${key}`;
  const sums = found.get(name) ?? {
    kind,
    key,
    codes: new Set<string>(),
    practices: new Map([["", new Set<string>()]]),
    visits: { met: 0, of: 0, notRecorded: 0 },
    clusters: { events: 0, units: 0, eventsSquared: 0, eventsByUnits: 0, unitsSquared: 0 },
    byCriterion: new Map(),
  };
  found.set(name, sums);
  if (code !== null) sums.codes.add(code);
  sums.practices.get("")?.add(practice);
  return sums;
}

function tallyOf(
  sums: Sums,
  period: Period,
  criteria: readonly { readonly id: string }[],
): OpportunityTally {
  const { visits, clusters } = sums;
  const parts = criteria.flatMap(({ id }, place) => {
    const counts = sums.byCriterion.get(place);
    return counts ? [{ criterion: id, ...counts }] : [];
  });
  return {
    subject: subjectOf(sums),
    period,
    opportunities: {
      met: clusters.events,
      of: clusters.units,
      notRecorded: parts.reduce((total, { notRecorded }) => total + notRecorded, 0),
    },
    visits,
    clusters: { clusters: visits.of, ...clusters },
    byCriterion: parts,
  };
}
