import type { PeopleBehind } from "@/lib/audit/disclosure/masks";
import type { Behind, Place } from "@/lib/measures/people-behind";
import { period } from "@/lib/records/period";
import { seededRandom } from "@/lib/statistics/seeded-random";

/** One visit, judged by a criterion of every visit and, where it is about it, by a rare one. */
export type Visit = {
  readonly practice: string;
  readonly chair: string;
  readonly month: number;
  readonly patient: string;
  readonly clinician: string;
  readonly every: Outcome;
  readonly rare: Outcome | null;
};

export const outcomes = ["met", "not met", "excepted", "not recorded", "left out"] as const;
export type Outcome = (typeof outcomes)[number];

/** Every period that an export can be of, written out apart from the code under test: months 1 to 12. */
export const times: readonly { name: string; months: readonly number[] }[] = [
  { name: "2026", months: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] },
  ...[1, 2, 3, 4].map((quarter) => ({
    name: `2026-Q${quarter}`,
    months: [quarter * 3 - 2, quarter * 3 - 1, quarter * 3],
  })),
  ...Array.from({ length: 12 }, (_, place) => ({
    name: `2026-${String(place + 1).padStart(2, "0")}`,
    months: [place + 1],
  })),
];

/** One to six practices with one to three chairs, over three months to a year, with few patients. */
export function randomGroup(seed: number): Visit[] {
  const random = seededRandom(seed * 7919);
  const upTo = (most: number) => 1 + Math.floor(random() * most);
  const months = [3, 3, 6, 12][upTo(4) - 1] ?? 3;
  const rareShare = random() * 0.3;
  return Array.from({ length: upTo(6) }, (_, place) => place).flatMap((place) => {
    const practice = `P${place}`;
    const [chairs, busy, clinicians] = [upTo(3), upTo(12), upTo(8)];
    return Array.from({ length: months }, (_, at) => at + 1).flatMap((month) =>
      Array.from({ length: Math.floor(random() * (busy + 1)) }, (): Visit => {
        const outcome = () => outcomes[Math.floor(random() ** 2 * outcomes.length)] ?? "met";
        return {
          practice,
          month,
          chair: `${practice}-${upTo(chairs)}`,
          patient: `${practice} ${upTo(busy * 3)}`,
          clinician: `${practice} ${upTo(clinicians)}`,
          every: outcome(),
          rare: random() < rareShare ? outcome() : null,
        };
      }),
    );
  });
}

/** Every place of the group. */
export function placesOf(visits: readonly Visit[]): Place[] {
  const practices = [...new Set(visits.map(({ practice }) => practice))];
  const chairs = [...new Map(visits.map((one) => [one.chair, one])).values()];
  return [
    { kind: "group" },
    ...practices.map((code) => ({ kind: "practice", code }) as const),
    ...chairs.map(({ practice, chair }) => ({ kind: "chair", practice, code: chair }) as const),
  ];
}

export function isAt(visit: Visit, place: Place): boolean {
  if (place.kind === "group") return true;
  return place.kind === "practice" ? visit.practice === place.code : visit.chair === place.code;
}

/** What the code under test is told. */
export function peopleBehindOf(visits: readonly Visit[]): PeopleBehind {
  const behind = (
    kinds: readonly Place["kind"][],
    whoOf: (visit: Visit) => string,
    some = visits,
    eligible?: (visit: Visit) => boolean,
  ): Behind[] =>
    placesOf(visits)
      .filter(({ kind }) => kinds.includes(kind))
      .flatMap((about) =>
        times.flatMap(({ name, months }): Behind[] => {
          const here = some.filter((one) => isAt(one, about) && months.includes(one.month));
          if (here.length === 0) return [];
          const people = new Set(here.map(whoOf)).size;
          const of = { about, period: name, people };
          return [
            eligible ? { ...of, eligible: new Set(here.filter(eligible).map(whoOf)).size } : of,
          ];
        }),
      );
  const patientOf = ({ patient }: Visit) => patient;
  const all = ["group", "practice", "chair"] as const;
  return {
    periods: times.flatMap(({ name }) => period(name) ?? []),
    patients: behind(all, patientOf),
    clinicians: behind(["practice"], ({ clinician }) => clinician),
    criteria: new Map([
      ["every", behind(all, patientOf, visits, ({ every }) => every !== "left out")],
      [
        "rare",
        behind(
          ["group", "practice"],
          patientOf,
          visits.filter(({ rare }) => rare !== null),
          ({ rare }) => rare !== "left out",
        ),
      ],
    ]),
  };
}
