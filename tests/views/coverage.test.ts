import { describe, expect, test } from "vitest";
import { dayAfter, period } from "@/lib/records/period";
import { coverageCalendar, missingWords } from "@/lib/views/coverage-calendar";
import { type CameOnDay, lacksOn } from "@/lib/views/expected-records";

// Expected values are worked by hand from the rule of thumb that the page states, and the chances by hand.

const whole = {
  visits: 4,
  treated: true,
  deliveries: true,
  instruments: true,
  upkeep: true,
  devices: ["M1"],
};
const until = "2026-07-04";
const days = (...some: (string | CameOnDay)[]) => ({
  until,
  came: new Map(
    some.map((one) => {
      const day = typeof one === "string" ? { ...whole, day: one } : one;
      return [day.day, day];
    }),
  ),
});
const friday = "2026-07-03";
const weeksBefore = (...weeks: number[]) => weeks.map((week) => dayAfter(friday, -7 * week));

describe("visits of a weekday", () => {
  test("are expected after some in four of the eight weeks before, not after three", () => {
    expect(lacksOn(friday, days(...weeksBefore(1, 3, 5, 8)))).toEqual([
      { kind: "visits", weeks: 4, missing: false },
    ]);
    expect(lacksOn(friday, days(...weeksBefore(1, 3, 5)))).toEqual([]);
  });

  test("of nine weeks before, or of other weekdays, say nothing", () => {
    expect(lacksOn(friday, days(...weeksBefore(1, 3, 5, 9)))).toEqual([]);
    const mondays = weeksBefore(1, 2, 3, 4, 5).map((day) => dayAfter(day, 3));
    expect(lacksOn(friday, days(...mondays))).toEqual([]);
  });

  test("are missing where the whole gap is seldom by the chair's habit", () => {
    // After eight of eight weeks one day without has a chance of 0.5 of 9, which is 1 in 18; after seven, 1 in 6.
    expect(lacksOn(friday, days(...weeksBefore(1, 2, 3, 4, 5, 6, 7, 8)))[0]?.missing).toBe(true);
    const seven = weeksBefore(1, 2, 3, 4, 5, 6, 7);
    expect(lacksOn(friday, days(...seven))[0]?.missing).toBe(false);
    // Two such days in a row: 1 in 36.
    const thursdays = seven.map((day) => dayAfter(day, -1));
    expect(lacksOn(friday, days(...seven, ...thursdays))[0]?.missing).toBe(true);
  });
});

describe("logs of a day with treatments", () => {
  const bare = {
    ...{ day: friday, visits: 2, treated: true },
    ...{ deliveries: false, instruments: false, upkeep: false, devices: [] },
  };

  test("are expected where half of the days with treatments had them", () => {
    const before = weeksBefore(1, 2, 3, 4);
    expect(lacksOn(friday, days(...before, bare))).toMatchObject([
      { kind: "deliveries" },
      { kind: "instruments" },
      { kind: "upkeep" },
      { kind: "device", device: "M1" },
    ]);
    const poor = before
      .slice(0, 3)
      .map((day) => ({ ...whole, day, upkeep: false, devices: ["M2"] }));
    expect(lacksOn(friday, days(...poor, before[3] ?? "", bare))).toMatchObject([
      { kind: "deliveries" },
      { kind: "instruments" },
      { kind: "device", device: "M2" },
    ]);
  });

  test("are missing where the gap is seldom: not after four days that had them, after eight", () => {
    const missing = (weeks: number[]) =>
      lacksOn(
        friday,
        days(...weeksBefore(...weeks), { ...bare, upkeep: true, devices: ["M1"] }),
      ).map((lack) => lack.missing);
    expect(missing([1, 2, 3, 4])).toEqual([false, false]);
    expect(missing([1, 2, 3, 4, 5, 6, 7, 8])).toEqual([true, true]);
  });

  test("are not judged by fewer than four days, nor on a day without a treatment", () => {
    expect(lacksOn(friday, days(...weeksBefore(1, 2, 3), bare))).toEqual([]);
    expect(lacksOn(friday, days(...weeksBefore(1, 2, 3, 4), { ...bare, treated: false }))).toEqual(
      [],
    );
  });
});

describe("the calendar", () => {
  const quarter = period("2026-Q3");
  if (!quarter) throw new Error("2026-Q3 is a period");
  const chair = {
    practice: "NORTH",
    chair: "NORTH-2",
    firstDay: "2026-05-01",
    today: "2026-07-17",
  };

  test("says what is missing in words, and nothing of days to come", () => {
    const came = [
      ...weeksBefore(1, 2, 3, 4, 5, 6, 7, 8).map((day) => ({ ...whole, day })),
      { ...whole, day: friday, deliveries: false },
    ];
    const [drawn] = coverageCalendar([{ ...chair, came }], quarter);
    expect(drawn?.missing).toEqual([
      { day: friday, words: "NORTH-2, 3 Jul 2026: 4 visits, no irrigation rows; usually there" },
      {
        day: "2026-07-10",
        words: "NORTH-2, 10 Jul 2026: no visits; there were some in 8 of the 8 weeks before",
      },
    ]);
    expect(drawn?.summary).toBe("4 visits on 1 day. Something is missing on 2 days (!).");
    const words = drawn?.calendar.rows.flatMap(({ days: all }) => all.map((one) => one?.words));
    expect(words).toContain("17 Jul 2026: not yet");
    expect(words).toContain("2 Jul 2026: no visit");
    expect(missingWords(drawn ? [drawn] : [])).toBe(
      "On 2 days of 1 chair something that is usually there did not come.",
    );
    const quiet = coverageCalendar([{ ...chair, came: came.slice(0, 4) }], quarter)[0];
    expect(quiet?.missing).toEqual([]);
    expect(quiet?.calendar.rows[4]?.days[0]?.words).toBe(
      "3 Jul 2026: no visits; there were some in 4 of the 8 weeks before; a quiet day",
    );
  });

  test("days before the records began lack nothing", () => {
    const [drawn] = coverageCalendar([{ ...chair, firstDay: null, came: [] }], quarter);
    expect(drawn).toMatchObject({ summary: "No visits are in.", missing: [] });
    const first = drawn?.calendar.rows[2]?.days[0];
    expect(first).toMatchObject({
      day: "2026-07-01",
      words: "1 Jul 2026: before the records began",
    });
  });
});
