import type { FiguresReach } from "@/lib/access/reach";
import type { Behind, Place } from "@/lib/measures/people-behind";
import { ofEveryCanal, peopleOf } from "@/lib/measures/units/people-of";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";

type Row = {
  readonly kind: Place["kind"];
  readonly practice: string;
  readonly chair: string;
  readonly period: number;
  readonly people: number;
};

type PeopleBehind = { readonly patients: Behind[]; readonly clinicians: Behind[] };

/**
 * How many patients are behind the visits of each place in each period, and clinicians behind those of each practice: what decides which
 * counts are masked. From what is kept of months, where the periods are made of months.
 */
export async function peopleBehind(
  reach: FiguresReach,
  periods: readonly Period[],
): Promise<PeopleBehind> {
  const months = monthsOfAll(periods);
  if (!months) return recomputed(reach, periods);
  return peopleOf(await readMonths(reach.practices, months, [ofEveryCanal], true), periods);
}

/** The same from the records, whatever is kept. */
export async function recomputed(
  reach: FiguresReach,
  periods: readonly Period[],
): Promise<PeopleBehind> {
  const [patients, clinicians] = await Promise.all([
    counted(reach, periods, "patient", visits),
    counted(reach, periods, "worker", workers),
  ]);
  return { patients, clinicians: clinicians.filter(({ about }) => about.kind === "practice") };
}

const visits = "select practice, chair, local_day, patient from visit_facts";
const workers = `select practice, chair, local_day, worker from visit_facts
  union select v.practice, v.chair, v.local_day, c.worker from canal_facts c join visit_facts v using (visit_id)`;

async function counted(
  { practices }: FiguresReach,
  periods: readonly Period[],
  person: "patient" | "worker",
  from: string,
): Promise<Behind[]> {
  const { rows } = await pool().query<Row>(
    `with spans as (
       select * from unnest($2::int[], $3::date[], $4::date[]) s(period, since, until)
     ), seen as (
       select distinct f.practice, f.chair, s.period, f.${person} as person from (${from}) f
       join spans s on f.local_day >= s.since and f.local_day < s.until where $1::text[] is null or f.practice = any($1)
     )
     select p.kind, p.practice, p.chair, period, count(distinct person)::int as people
     from seen cross join lateral (values ('group', '', ''), ('practice', seen.practice, ''), ('chair', seen.practice, seen.chair)) p(kind, practice, chair)
     group by p.kind, p.practice, p.chair, period order by p.kind, p.practice, p.chair, period`,
    [
      practices,
      periods.map((_, place) => place),
      periods.map(({ from: since }) => since),
      periods.map(({ until }) => until),
    ],
  );
  return rows.map(({ period, people, ...row }) => ({
    about: placeOf(row),
    period: periods[period]?.name ?? "",
    people,
  }));
}

function placeOf({ kind, practice, chair }: Pick<Row, "kind" | "practice" | "chair">): Place {
  if (kind === "group") return { kind };
  return kind === "practice" ? { kind, code: practice } : { kind, practice, code: chair };
}
