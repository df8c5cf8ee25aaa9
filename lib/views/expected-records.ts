import { dayAfter } from "@/lib/records/period";

/** What came of a chair on a day with visits. */
export type CameOnDay = {
  readonly day: string;
  readonly visits: number;
  /** Was there a treatment of which logs can be expected. */
  readonly treated: boolean;
  readonly deliveries: boolean;
  readonly instruments: boolean;
  readonly upkeep: boolean;
  readonly devices: readonly string[];
};

/** A chair's days with visits by day, as far as the last day that is over: `until` is the one after it. */
export type ChairRecord = {
  readonly came: ReadonlyMap<string, CameOnDay>;
  readonly until: string;
};

/**
 * What was expected and did not come. `missing`: the gap it belongs to is longer than the chair's habit makes one in fifteen;
 * else it may well be a quiet day.
 */
export type Lack = { readonly missing: boolean } & (
  | { readonly kind: "visits"; readonly weeks: number }
  | { readonly kind: "deliveries" | "instruments" | "upkeep" }
  | { readonly kind: "device"; readonly device: string }
);

/** What is usual is judged by the eight weeks before; at least half of them must have it: common practice, a rule of thumb. */
const weeksBefore = 8;
const daysBefore = 7 * weeksBefore;
const usualShare = 0.5;
/** On fewer days with treatments than this nothing can be called usual; common practice. */
const fewestDays = 4;
/** One day without, after eight weeks that all had it, has a chance of 1 in 18 (0.5 of 9) and is to be seen; common practice. */
const seldom = 1 / 15;

/**
 * What is usually there of a chair and did not come on a day: visits, where the same weekday had some in at least half of the
 * eight weeks before; of a day with treatments deliveries, instrument uses, upkeep and devices that at least half of the chair's
 * days with treatments in those weeks had, where there are four such days or more.
 */
export function lacksOn(day: string, record: ChairRecord): Lack[] {
  const { came } = record;
  const there = came.get(day);
  if (!there) {
    const weeks = weeksWithVisits(day, came);
    return weeks >= usualShare * weeksBefore
      ? [{ kind: "visits", weeks, missing: chanceOfGap(day, record, noVisits) < seldom }]
      : [];
  }
  if (!there.treated) return [];
  const lack = (has: Has) => {
    const gap = without(has);
    const before = comeBefore(day, came);
    if (has(there) || before.length < fewestDays || !isUsual(before, has)) return undefined;
    return { missing: chanceOfGap(day, record, gap) < seldom };
  };
  const logs = (["deliveries", "instruments", "upkeep"] as const).flatMap((kind) => {
    const found = lack((one) => one[kind]);
    return found ? [{ kind, ...found }] : [];
  });
  const devices = [...new Set(comeBefore(day, came).flatMap((one) => one.devices))].sort();
  return [
    ...logs,
    ...devices.flatMap((device) => {
      const found = lack((one) => one.devices.includes(device));
      return found ? [{ kind: "device" as const, device, ...found }] : [];
    }),
  ];
}

/** The first day that must be known to judge a day by, and the gap it may lie in. */
export function judgedFrom(day: string): string {
  return dayAfter(day, -2 * daysBefore);
}

type Has = (one: CameOnDay) => boolean;

/**
 * A day within a gap: the chance that it is without by the chair's habit (1 where nothing is expected), or undefined where
 * the gap ends.
 */
type InGap = (day: string, came: ChairRecord["came"]) => number | undefined;

const noVisits: InGap = (day, came) => {
  if (came.has(day)) return undefined;
  const weeks = weeksWithVisits(day, came);
  return weeks >= usualShare * weeksBefore ? chanceWithout(weeks, weeksBefore) : 1;
};

function without(has: Has): InGap {
  return (day, came) => {
    const there = came.get(day);
    if (!there?.treated) return 1;
    if (has(there)) return undefined;
    const before = comeBefore(day, came);
    return isUsual(before, has) ? chanceWithout(before.filter(has).length, before.length) : 1;
  };
}

/** The chance of the whole gap round a day, its days taken as independent. */
function chanceOfGap(day: string, { came, until }: ChairRecord, inGap: InGap): number {
  let chance = inGap(day, came) ?? 1;
  for (const step of [-1, 1]) {
    for (let far = 1; far <= daysBefore; far += 1) {
      const at = dayAfter(day, step * far);
      const without = at < until ? inGap(at, came) : undefined;
      if (without === undefined) break;
      chance *= without;
    }
  }
  return chance;
}

/** The share of `all` that are without, by Jeffreys: half a case is added to either side. */
function chanceWithout(withIt: number, all: number): number {
  return 1 - (withIt + 0.5) / (all + 1);
}

function weeksWithVisits(day: string, came: ChairRecord["came"]): number {
  return Array.from({ length: weeksBefore }, (_, week) => dayAfter(day, -7 * (week + 1))).filter(
    (one) => came.has(one),
  ).length;
}

/** The days with treatments of the weeks before. */
function comeBefore(day: string, came: ChairRecord["came"]): CameOnDay[] {
  return Array.from({ length: daysBefore }, (_, back) =>
    came.get(dayAfter(day, -(back + 1))),
  ).filter((one): one is CameOnDay => one?.treated === true);
}

function isUsual(before: readonly CameOnDay[], has: Has): boolean {
  return before.filter(has).length >= usualShare * before.length;
}
