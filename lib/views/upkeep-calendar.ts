import type { Period } from "@/lib/records/period";
import { byKey } from "./by-key";
import { day } from "./day";
import { type DayCalendar, type DrawnDay, dayCalendar } from "./day-calendar";
import { count } from "./quantity";
import {
  dayWords,
  lineRinse,
  stateCounts,
  stateWords,
  type UpkeepRow,
  type UpkeepState,
  upkeepState,
  upkeepStates,
} from "./upkeep-state";

const drawn: Record<UpkeepState, Pick<DrawnDay, "shape" | "tone">> = {
  done: { shape: "●", tone: "plain" },
  short: { shape: "◐", tone: "look" },
  untimed: { shape: "○", tone: "plain" },
  "not-done": { shape: "▲", tone: "look" },
  out: { shape: "◆", tone: "plain" },
  none: { shape: "?", tone: "plain" },
  unused: { shape: "□", tone: "faint" },
  unasked: { shape: "–", tone: "faint" },
};

export type UpkeepLegend = {
  readonly shape: string;
  readonly words: string;
  readonly days: string;
};
export type UpkeepChair = {
  readonly practice: string;
  readonly chair: string;
  /** "46 days in use: 33 rinsed 30 s or longer, 12 under 30 s …" */
  readonly summary: string;
  readonly calendar: DayCalendar;
};
export type UpkeepCalendar = {
  readonly legend: readonly UpkeepLegend[];
  readonly chairs: readonly UpkeepChair[];
  /** The days in use on which the task was not done as it should be, for those who read rather than look. */
  readonly list: readonly {
    readonly id: string;
    readonly chair: string;
    readonly day: string;
    readonly words: string;
  }[];
};

/** The calendar of an upkeep task: chairs in their order, each chair's days by week; days from `until` on are still to come. */
export function upkeepCalendar(
  rows: readonly UpkeepRow[],
  period: Period,
  task = lineRinse,
  until = period.until,
): UpkeepCalendar {
  const chairs = byKey(rows, (row) => `${row.practice}\n${row.chair}`);
  return {
    legend: legendOf(rows, task),
    chairs: [...chairs.values()].flatMap((days) => {
      const [first] = days;
      return first
        ? [
            {
              practice: first.practice,
              chair: first.chair,
              summary: summaryOf(days, task),
              calendar: calendarOf(days, period, task, until),
            },
          ]
        : [];
    }),
    list: rows
      .filter((row) => row.inUse && !["done", "unasked"].includes(upkeepState(row, task)))
      .map((row) => ({
        id: `${row.practice}/${row.chair}/${row.day}`,
        chair: row.chair,
        day: day(row.day),
        words: dayWords(row, task),
      })),
  };
}

/** "46 days in use: …", and the days with a record on which it was not; of several chairs, chair-days. */
export function summaryOf(rows: readonly UpkeepRow[], task: string, several = false): string {
  const days = (some: number) =>
    `${count(some)} ${several ? "chair-" : ""}${some === 1 ? "day" : "days"}`;
  const asked = rows.filter((row) => upkeepState(row, task) !== "unasked");
  const used = asked.filter((row) => row.inUse);
  const unused = asked.length - used.length;
  if (rows.length > 0 && asked.length === 0) return "The task was asked for on none of these days.";
  return [
    used.length === 0
      ? `No ${several ? "chair-day" : "day"} in use.`
      : `${days(used.length)} in use: ${stateCounts(used, task)}.`,
    unused === 0 ? "" : `A record on ${days(unused)} not in use.`,
  ]
    .filter(Boolean)
    .join(" ");
}

function calendarOf(
  rows: readonly UpkeepRow[],
  period: Period,
  task: string,
  until: string,
): DayCalendar {
  const shown = new Map<string, DrawnDay>(
    rows.map((row) => [row.day, { ...drawn[upkeepState(row, task)], words: dayWords(row, task) }]),
  );
  const unused: DrawnDay = { shape: "·", words: "not in use", tone: "faint" };
  return dayCalendar(period, shown, unused, until);
}

/** Only a rinse has a least time; days not in use or not asked for are told apart only where there are some. */
function legendOf(rows: readonly UpkeepRow[], task: string): UpkeepLegend[] {
  return upkeepStates.flatMap((state) => {
    const some = rows.filter((row) => upkeepState(row, task) === state).length;
    const timed = state === "short" || state === "untimed";
    if ((timed && task !== lineRinse) || (["unused", "unasked"].includes(state) && some === 0))
      return [];
    return [{ shape: drawn[state].shape, words: stateWords(state, task), days: count(some) }];
  });
}
