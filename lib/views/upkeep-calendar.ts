import type { Period } from "@/lib/records/period";
import { byKey } from "./by-key";
import { day } from "./day";
import { type DayCalendar, type DrawnDay, dayCalendar } from "./day-calendar";
import { count, duration } from "./quantity";

/** The least time a line is to be rinsed, in seconds (common practice, as in the criterion). */
const leastSeconds = 30;

/** What became of the rinse on a chair and day on which the chair's line carried irrigant. */
export type UpkeepRow = {
  readonly practice: string;
  readonly chair: string;
  readonly day: string;
  readonly status: "done" | "not-done" | "out-of-service" | null;
  readonly durationS: number | null;
};

const states = {
  done: { shape: "●", words: "rinsed 30 s or longer", tone: "plain" },
  short: { shape: "◐", words: "rinsed under 30 s", tone: "look" },
  untimed: { shape: "○", words: "rinsed, no duration recorded", tone: "plain" },
  "not-done": { shape: "▲", words: "not rinsed", tone: "look" },
  out: { shape: "◆", words: "out of service", tone: "plain" },
  none: { shape: "?", words: "no row", tone: "plain" },
} as const;
type State = keyof typeof states;

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
  /** The days that were not rinsed for 30 s or longer, for those who read rather than look. */
  readonly list: readonly {
    readonly id: string;
    readonly chair: string;
    readonly day: string;
    readonly words: string;
  }[];
};

/** The calendar of line rinses: chairs in their order, each chair's days by week. */
export function upkeepCalendar(rows: readonly UpkeepRow[], period: Period): UpkeepCalendar {
  const chairs = byKey(rows, (row) => `${row.practice}\n${row.chair}`);
  return {
    legend: legendOf(rows),
    chairs: [...chairs.values()].flatMap((days) => {
      const [first] = days;
      return first
        ? [
            {
              practice: first.practice,
              chair: first.chair,
              summary: summaryOf(days),
              calendar: calendarOf(days, period),
            },
          ]
        : [];
    }),
    list: rows
      .filter((row) => stateOf(row) !== "done")
      .map((row) => ({
        id: `${row.practice}/${row.chair}/${row.day}`,
        chair: row.chair,
        day: day(row.day),
        words: wordsOf(row),
      })),
  };
}

function calendarOf(rows: readonly UpkeepRow[], period: Period): DayCalendar {
  const drawn = new Map<string, DrawnDay>(
    rows.map((row) => [row.day, { ...states[stateOf(row)], words: wordsOf(row) }]),
  );
  return dayCalendar(period, drawn, { shape: "·", words: "not in use", tone: "faint" });
}

function stateOf(row: UpkeepRow): State {
  if (row.status === null) return "none";
  if (row.status === "out-of-service") return "out";
  if (row.status === "not-done") return "not-done";
  if (row.durationS === null) return "untimed";
  return row.durationS >= leastSeconds ? "done" : "short";
}

function wordsOf(row: UpkeepRow): string {
  const state = stateOf(row);
  if ((state === "done" || state === "short") && row.durationS !== null) {
    return `rinsed for ${duration(row.durationS)}${state === "short" ? ", under 30 s" : ""}`;
  }
  return states[state].words;
}

function legendOf(rows: readonly UpkeepRow[]): UpkeepLegend[] {
  return keys().map((state) => ({
    shape: states[state].shape,
    words: states[state].words,
    days: count(rows.filter((row) => stateOf(row) === state).length),
  }));
}

function summaryOf(rows: readonly UpkeepRow[]): string {
  const parts = keys().flatMap((state) => {
    const days = rows.filter((row) => stateOf(row) === state).length;
    return days === 0 ? [] : [`${count(days)} ${states[state].words}`];
  });
  return `${count(rows.length)} ${rows.length === 1 ? "day" : "days"} in use: ${parts.join("; ")}.`;
}

function keys(): State[] {
  return Object.keys(states) as State[];
}
