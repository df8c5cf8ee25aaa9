import type { Period } from "@/lib/records/period";
import { byKey } from "./by-key";
import { type DayCalendar, type DrawnDay, dayCalendar } from "./day-calendar";
import { count } from "./quantity";

export type CoverageChair = {
  readonly practice: string;
  readonly chair: string;
  readonly summary: string;
  readonly calendar: DayCalendar;
};

/** Days on which visits are in, chair by chair; what a day shows is how many. */
export function coverageCalendar(
  rows: readonly { practice: string; chair: string; day: string | null; visits: number }[],
  period: Period,
): CoverageChair[] {
  return [...byKey(rows, (row) => `${row.practice}\n${row.chair}`).values()].flatMap((days) => {
    const [first] = days;
    if (!first) return [];
    const drawn = new Map(
      days.flatMap(({ day, visits }): [string, DrawnDay][] =>
        day === null
          ? []
          : [[day, { shape: String(visits), words: visitsWords(visits), tone: "plain" }]],
      ),
    );
    const visits = days.reduce((total, one) => total + one.visits, 0);
    return [
      {
        practice: first.practice,
        chair: first.chair,
        summary:
          visits === 0
            ? "No visits are in."
            : `${visitsWords(visits)} on ${count(drawn.size)} ${drawn.size === 1 ? "day" : "days"}.`,
        calendar: dayCalendar(period, drawn, { shape: "·", words: "no visit", tone: "faint" }),
      },
    ];
  });
}

function visitsWords(visits: number): string {
  return `${count(visits)} ${visits === 1 ? "visit" : "visits"}`;
}
