import { expect, test } from "vitest";
import { monthsUpTo } from "@/lib/records/period";
import { monthsChart } from "@/lib/views/months-chart";
import { medianFigure } from "./made-figure";
import { measured } from "./measured";

// Expected words: computed by hand from the figures given.

const months = monthsUpTo("2026-10-01", 24);
const figure = (name: string, median: number) => ({ ...medianFigure({ median }), period: name });

test("two years are 24 rows; a month without units is a gap, never 0", () => {
  const chart = monthsChart({
    measure: measured("volume"),
    months,
    figures: [figure("2026-07", 18), figure("2026-09", 20)],
  });
  expect(chart.rows).toHaveLength(24);
  expect(chart.rows[0]?.id).toBe("2024-10");
  expect(chart.rows.at(-1)).toMatchObject({ id: "2026-09", estimate: 20, lower: 17, upper: 20 });
  expect(chart.rows.at(-2)).toMatchObject({
    id: "2026-08",
    estimate: null,
    lower: null,
    upper: null,
    words: "Aug 2026: no units.",
  });
  expect(chart.title).toBe(
    "Irrigant volume per canal: between 18.0 mL and 20.0 mL a month; 22 of 24 months have no units",
  );
});

test("no unit at all is said, and no value is made up", () => {
  const chart = monthsChart({ measure: measured("volume"), months, figures: [] });
  expect(chart.title).toBe("Irrigant volume per canal: no units in these 24 months");
  expect(chart.rows.every((row) => row.estimate === null)).toBe(true);
});

test("the labels under the axis are those of quarters, and of the first month", () => {
  const labels = monthsChart({
    measure: measured("volume"),
    months: monthsUpTo("2026-10-01", 5),
    figures: [],
  }).rows.map((row) => row.label);
  expect(labels).toEqual(["May 2026", "", "Jul 2026", "", ""]);
});
