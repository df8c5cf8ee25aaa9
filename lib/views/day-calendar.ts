import { dayAfter, type Period } from "@/lib/records/period";
import { day, month } from "./day";

/** One day of a calendar: a shape for the eye, the words for everyone; null where the day lies outside the period. */
export type CalendarDay = {
  readonly day: string;
  readonly shape: string;
  /** "3 Jul 2026: rinsed for 44 s" */
  readonly words: string;
  /** How much it asks to be seen. */
  readonly tone: "plain" | "look" | "faint";
};

/** A calendar of one chair: a row for each day of the week, a column for each week. */
export type DayCalendar = {
  /** The months with how many weeks they head, in order. */
  readonly months: readonly { readonly name: string; readonly weeks: number }[];
  readonly rows: readonly {
    readonly weekday: string;
    readonly days: readonly (CalendarDay | null)[];
  }[];
};

/** A day as it is to be drawn, without its date. */
export type DrawnDay = Omit<CalendarDay, "day">;

const notYet: DrawnDay = { shape: " ", words: "not recorded yet", tone: "faint" };

const weekdays = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/**
 * Lays the days of a period out by weeks that begin on Monday (ISO 8601). Saturday and Sunday are left out where
 * nothing happened on them.
 *
 * @param drawn the days on which there is something to show
 * @param empty what every other day shows; its words get the date before them
 * @param until the day after the last one that is recorded: later days are not yet there
 */
export function dayCalendar(
  period: Period,
  drawn: ReadonlyMap<string, DrawnDay>,
  empty: DrawnDay,
  until = period.until,
): DayCalendar {
  const weeks = mondaysOf(period);
  const rows = weekdays.map((weekday, place) => ({
    weekday,
    days: weeks.map((monday): CalendarDay | null => {
      const at = dayAfter(monday, place);
      if (at < period.from || at >= period.until) return null;
      const shown = drawn.get(at) ?? (at < until ? empty : notYet);
      return { ...shown, day: at, words: `${day(at)}: ${shown.words}` };
    }),
  }));
  return {
    months: monthsOf(weeks, period),
    rows: rows.filter(
      (row, place) => place < 5 || row.days.some((one) => one && drawn.has(one.day)),
    ),
  };
}

function mondaysOf(period: Period): string[] {
  const first = new Date(`${period.from}T00:00:00Z`);
  const monday = dayAfter(period.from, -((first.getUTCDay() + 6) % 7));
  const found: string[] = [];
  for (let at = monday; at < period.until; at = dayAfter(at, 7)) found.push(at);
  return found;
}

/** A week is headed by the month of its first day within the period. */
function monthsOf(weeks: readonly string[], period: Period): { name: string; weeks: number }[] {
  const found: { name: string; weeks: number }[] = [];
  for (const monday of weeks) {
    const name = month([monday, period.from].sort()[1] ?? monday);
    const last = found.at(-1);
    if (last?.name === name) last.weeks += 1;
    else found.push({ name, weeks: 1 });
  }
  return found;
}
