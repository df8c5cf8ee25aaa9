import { dayAfter, type Period } from "@/lib/records/period";
import { day } from "./day";
import { count } from "./quantity";

/** Visits of a chair in a week, as the store counts them. */
export type ChairWeek = {
  readonly practice: string;
  readonly chair: string;
  readonly monday: string | null;
  readonly visits: number;
};

/** Visits by chair and week of a period. */
export type WeekGrid = {
  /** The weeks by their first day within the period. */
  readonly weeks: readonly { readonly id: string; readonly words: string }[];
  readonly chairs: readonly {
    readonly id: string;
    readonly name: string;
    /** One a week: a count, "none", or "not in yet" after the last recorded day. */
    readonly cells: readonly {
      readonly week: string;
      readonly words: string;
      readonly gap: boolean;
    }[];
    readonly whole: string;
  }[];
  /** Sentences on the weeks without a visit, one a chair. */
  readonly gaps: readonly string[];
};

/**
 * Weeks run from Monday. A week without a visit is a gap and is said; whether the chair was closed or the records are
 * missing, these records cannot tell. Weeks after the last recorded day are not in yet.
 *
 * @param lastDay the last day with a visit within the reach, YYYY-MM-DD, null where there is none
 */
export function weekGrid(
  rows: readonly ChairWeek[],
  period: Period,
  lastDay: string | null,
): WeekGrid {
  const mondays = mondaysOf(period);
  const chairs = new Map<string, { name: string; visits: Map<string, number> }>();
  for (const row of rows) {
    const id = `${row.practice}/${row.chair}`;
    const chair = chairs.get(id) ?? { name: nameOf(row), visits: new Map<string, number>() };
    if (row.monday !== null) chair.visits.set(row.monday, row.visits);
    chairs.set(id, chair);
  }
  const isIn = (monday: string) => lastDay !== null && monday <= lastDay;
  const lines = [...chairs].map(([id, { name, visits }]) => {
    const cells = mondays.map((week) => {
      const number = visits.get(week);
      const gap = number === undefined && isIn(week);
      return {
        week,
        gap,
        words: number === undefined ? (gap ? "none" : "not in yet") : count(number),
      };
    });
    return {
      id,
      name,
      cells,
      whole: count([...visits.values()].reduce((sum, number) => sum + number, 0)),
    };
  });
  return {
    weeks: mondays.map((id) => ({ id, words: firstDayIn(period, id) })),
    chairs: lines,
    gaps: lines.flatMap((line) => gapSentence(line.name, line.cells, period) ?? []),
  };
}

function gapSentence(
  name: string,
  cells: readonly { week: string; gap: boolean }[],
  period: Period,
): string | null {
  const gaps = cells.filter((cell) => cell.gap);
  if (gaps.length === 0) return null;
  if (gaps.length === cells.length) return `${name} has no visit in this period.`;
  const weeks = gaps.map((cell) => firstDayIn(period, cell.week));
  const named =
    weeks.length <= 4
      ? weeks.join(", ")
      : `${weeks.slice(0, 3).join(", ")} and ${count(weeks.length - 3)} more`;
  return `${name} has no visit in ${count(gaps.length)} of ${count(cells.length)} weeks (from ${named}).`;
}

function nameOf(row: ChairWeek): string {
  return row.chair.startsWith(row.practice) ? row.chair : `${row.chair}, ${row.practice}`;
}

function mondaysOf(period: Period): string[] {
  const found: string[] = [];
  // 1970-01-05 was a Monday.
  const days = Math.round(Date.parse(`${period.from}T00:00:00Z`) / 86_400_000) - 4;
  for (
    let at = dayAfter(period.from, -(((days % 7) + 7) % 7));
    at < period.until;
    at = dayAfter(at, 7)
  )
    found.push(at);
  return found;
}

/** A week's first day within the period: a quarter rarely starts on a Monday. */
function firstDayIn(period: Period, monday: string): string {
  return shortDay([monday, period.from].sort()[1] ?? monday);
}

function shortDay(iso: string): string {
  return day(iso).replace(/ \d{4}$/, "");
}
