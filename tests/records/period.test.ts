import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  dayAfter,
  isDay,
  monthsUpTo,
  period,
  quarterOf,
  rollingYear,
  shifted,
} from "@/lib/records/period";

// Expected days: the Gregorian calendar (ISO 8601); a leap day in 2024 and 2000, none in 2026 and 1900.
describe("a period", () => {
  it.each([
    ["2026-Q3", "2026-07-01", "2026-10-01"],
    ["2026-q4", "2026-10-01", "2027-01-01"],
    ["2026-02", "2026-02-01", "2026-03-01"],
    ["2025-12", "2025-12-01", "2026-01-01"],
    ["2026", "2026-01-01", "2027-01-01"],
    ["2024-02-28..2024-02-29", "2024-02-28", "2024-03-01"],
    ["2026-07-03..2026-07-03", "2026-07-03", "2026-07-04"],
  ])("%s runs from %s until before %s", (text, from, until) => {
    expect(period(text)).toMatchObject({ from, until });
  });

  it.each([
    "2026-Q0",
    "2026-Q5",
    "2026-13",
    "2026-00",
    "26-Q1",
    "",
    "last quarter",
    "2026-02-30..2026-03-01",
    "2026-03-02..2026-03-01",
    "2026-03-01..",
    "2026-03-01",
    "1900-02-29..1900-03-01",
    "0000",
    "0000-Q1",
    "0001-01",
    "1899-12",
    "2200",
    "9999-Q4",
    "9999-12",
    "0001-01-01..9999-12-31",
  ])("%j names none", (text) => {
    expect(period(text)).toBeUndefined();
  });

  it.each([
    ["2026-Q1", -1, "2025-10-01", "2026-01-01"],
    ["2026-Q4", 1, "2027-01-01", "2027-04-01"],
    ["2026-01", -1, "2025-12-01", "2026-01-01"],
    ["2026", -2, "2024-01-01", "2025-01-01"],
    ["2026-03-01..2026-03-07", -1, "2026-02-22", "2026-03-01"],
    ["2026-03-01..2026-03-07", 2, "2026-03-15", "2026-03-22"],
  ])("%s moved by %i steps runs from %s until before %s", (text, steps, from, until) => {
    expect(shifted(named(text), steps)).toMatchObject({ from, until });
  });

  it("moved there and back is the same", () => {
    const names = fc.oneof(
      fc
        .tuple(fc.integer({ min: 1990, max: 2100 }), fc.integer({ min: 1, max: 4 }))
        .map(([y, q]) => `${y}-Q${q}`),
      fc
        .tuple(fc.integer({ min: 1990, max: 2100 }), fc.integer({ min: 1, max: 12 }))
        .map(([y, m]) => `${y}-${String(m).padStart(2, "0")}`),
    );
    fc.assert(
      fc.property(names, fc.integer({ min: -50, max: 50 }), (name, steps) => {
        expect(shifted(shifted(named(name), steps), -steps)).toEqual(named(name));
      }),
    );
  });

  it("follows on without a gap or an overlap", () => {
    for (const name of ["2026-Q3", "2026-07", "2026", "2026-07-03..2026-07-12"]) {
      expect(shifted(named(name), 1).from).toBe(named(name).until);
    }
  });

  it.each([
    ["2026-01-01", "2026-Q1"],
    ["2026-03-31", "2026-Q1"],
    ["2026-04-01", "2026-Q2"],
    ["2026-12-31", "2026-Q4"],
  ])("%s lies in %s", (day, name) => {
    expect(quarterOf(day).name).toBe(name);
  });

  it("gives the months that end with a quarter, oldest first", () => {
    expect(monthsUpTo(named("2026-Q1").until, 4).map((month) => month.name)).toEqual([
      "2025-12",
      "2026-01",
      "2026-02",
      "2026-03",
    ]);
  });

  it("gives four quarters up to a period's last day", () => {
    expect(rollingYear(named("2026-Q3"))).toEqual({
      name: "2025-10-01..2026-09-30",
      from: "2025-10-01",
      until: "2026-10-01",
    });
  });
});

describe("a day", () => {
  it.each(["2024-02-29", "2000-02-29", "2026-12-31"])("%s is in the calendar", (text) => {
    expect(isDay(text)).toBe(true);
  });

  it.each([
    "2026-02-29",
    "1900-02-29",
    "2026-04-31",
    "2026-00-10",
    "2026-1-1",
    "20260101",
    "2026-01-01T00:00",
    "",
  ])("%j is not", (text) => {
    expect(isDay(text)).toBe(false);
  });

  it.each([
    ["2024-02-28", 1, "2024-02-29"],
    ["2026-02-28", 1, "2026-03-01"],
    ["2026-01-01", -1, "2025-12-31"],
  ])("%s and %i days is %s", (day, days, after) => {
    expect(dayAfter(day, days)).toBe(after);
  });
});

function named(text: string) {
  const found = period(text);
  if (!found) throw new Error(`no period: ${text}`);
  return found;
}
