import { expect, test } from "vitest";
import { period } from "@/lib/records/period";
import { dayCalendar } from "@/lib/views/day-calendar";

// Weeks begin on Monday (ISO 8601). 1 July 2026 is a Wednesday, 30 September 2026 too (computed: date -d 2026-07-01 +%a).
const quarter = period("2026-Q3");
if (!quarter) throw new Error("no such quarter");
const empty = { shape: "·", words: "nothing", tone: "faint" } as const;
const drawn = new Map([["2026-07-01", { shape: "●", words: "done", tone: "plain" } as const]]);

test("a quarter is laid out by weeks, days outside it left blank", () => {
  const { rows, months } = dayCalendar(quarter, drawn, empty);
  expect(rows.map((row) => row.weekday)).toEqual(["Mon", "Tue", "Wed", "Thu", "Fri"]);
  expect(rows.every((row) => row.days.length === 14)).toBe(true);
  expect(rows[0]?.days[0]).toBeNull();
  expect(rows[2]?.days[0]).toMatchObject({ day: "2026-07-01", words: "1 Jul 2026: done" });
  expect(rows[2]?.days[13]).toMatchObject({ day: "2026-09-30", words: "30 Sep 2026: nothing" });
  expect(rows[3]?.days[13]).toBeNull();
  expect(months).toEqual([
    { name: "Jul 2026", weeks: 5 },
    { name: "Aug 2026", weeks: 5 },
    { name: "Sep 2026", weeks: 4 },
  ]);
});

test("a weekend appears when something happened on it", () => {
  // 4 July 2026 is a Saturday.
  const saturday = new Map([
    ["2026-07-04", { shape: "▲", words: "not done", tone: "look" } as const],
  ]);
  expect(dayCalendar(quarter, saturday, empty).rows.map((row) => row.weekday)).toEqual([
    "Mon",
    "Tue",
    "Wed",
    "Thu",
    "Fri",
    "Sat",
  ]);
});
