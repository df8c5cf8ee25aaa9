import { expect, test } from "vitest";
import { period } from "@/lib/records/period";
import { weekGrid } from "@/lib/views/week-grid";

// 1 Jul 2026 is a Wednesday and 28 Sep 2026 a Monday (computed with date -d 2026-07-01 +%A).
const quarter = period("2026-Q3");
if (!quarter) throw new Error("2026-Q3 is a period");
const row = (chair: string, monday: string | null, visits: number) => ({
  practice: "P1",
  chair,
  monday,
  visits,
});

test("weeks run from Monday and are named by their first day in the period", () => {
  const { weeks } = weekGrid([], quarter, "2026-09-30");
  expect(weeks).toHaveLength(14);
  expect(weeks[0]).toEqual({ id: "2026-06-29", words: "1 Jul" });
  expect(weeks[1]?.words).toBe("6 Jul");
  expect(weeks.at(-1)).toEqual({ id: "2026-09-28", words: "28 Sep" });
});

test("a week without a visit is said in words and is not 0", () => {
  const grid = weekGrid(
    [row("P1-1", "2026-06-29", 4), row("P1-1", "2026-07-13", 1200)],
    quarter,
    "2026-07-19",
  );
  expect(grid.chairs[0]?.cells.slice(0, 4).map((cell) => cell.words)).toEqual([
    "4",
    "none",
    "1\u202f200",
    "not in yet",
  ]);
  expect(grid.chairs[0]?.whole).toBe("1\u202f204");
  expect(grid.gaps).toEqual(["P1-1 has no visit in 1 of 14 weeks (from 6 Jul)."]);
});

test("a known chair without any visit is there and is said", () => {
  const grid = weekGrid([row("Surgery", null, 0)], quarter, "2026-09-30");
  expect(grid.chairs[0]?.name).toBe("Surgery, P1");
  expect(grid.gaps).toEqual(["Surgery, P1 has no visit in this period."]);
});

test("many gaps are counted, and the first named", () => {
  const grid = weekGrid([row("P1-1", "2026-06-29", 1)], quarter, "2026-09-30");
  expect(grid.gaps).toEqual([
    "P1-1 has no visit in 13 of 14 weeks (from 6 Jul, 13 Jul, 20 Jul and 10 more).",
  ]);
});

test("where no record is in, no week is a gap", () => {
  const grid = weekGrid([row("P1-1", null, 0)], quarter, null);
  expect(grid.gaps).toEqual([]);
  expect(grid.chairs[0]?.cells[0]?.words).toBe("not in yet");
});
