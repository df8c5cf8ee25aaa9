import { expect, test } from "vitest";
import { isoText } from "@/lib/intake/mapping/clock-text";
import { numberReader } from "@/lib/intake/mapping/numbers";
import { wordReader } from "@/lib/intake/mapping/words";

// Expected values are worked by hand.

test("a day and time in the order that the mapping says", () => {
  const dayFirst = { day: "day-month-year", hours: 24 } as const;
  const monthFirst = { day: "month-day-year", hours: 12 } as const;
  const yearFirst = { day: "year-month-day", hours: 24 } as const;
  expect(isoText("01.07.2026 08:50", dayFirst)).toBe("2026-07-01T08:50:00");
  expect(isoText("1/7/26 8:50", dayFirst)).toBe("2026-07-01T08:50:00");
  expect(isoText("3 juillet 2026 14h05", dayFirst)).toBe("2026-07-03T14:05:00");
  expect(isoText("3. März 2026", dayFirst)).toBe("2026-03-03");
  expect(isoText("3 März 2026", dayFirst)).toBe("2026-03-03");
  expect(isoText("07/01/2026 08:50 AM", monthFirst)).toBe("2026-07-01T08:50:00");
  expect(isoText("07/01/2026 12:05 AM", monthFirst)).toBe("2026-07-01T00:05:00");
  expect(isoText("07/01/2026 12:05 p.m.", monthFirst)).toBe("2026-07-01T12:05:00");
  expect(isoText("Jul 1, 2026 1:33 PM", monthFirst)).toBe("2026-07-01T13:33:00");
  expect(isoText("2026-07-01T08:50:10+02:00", yearFirst)).toBe("2026-07-01T08:50:10+02:00");
  expect(isoText("20260701 0850", yearFirst)).toBeUndefined();
  expect(isoText("20260701 08:50", yearFirst)).toBe("2026-07-01T08:50:00");
});

test("what is not in that order is not read", () => {
  expect(isoText("13/04/2026", { day: "month-day-year", hours: 24 })).toBeUndefined();
  expect(isoText("01.07.2026 08:50 AM", { day: "day-month-year", hours: 24 })).toBeUndefined();
  expect(isoText("01.07.2026 13:50 PM", { day: "day-month-year", hours: 12 })).toBeUndefined();
  expect(isoText("01.07.2026 24:10", { day: "day-month-year", hours: 24 })).toBeUndefined();
  expect(isoText("tomorrow", { day: "day-month-year", hours: 24 })).toBeUndefined();
});

test("seconds since 1970 are of UTC", () => {
  expect(isoText("1782895800", { day: "unix-s", hours: 24 })).toBe("2026-07-01T08:50:00.000Z");
  expect(isoText("1782895800000", { day: "unix-ms", hours: 24 })).toBe("2026-07-01T08:50:00.000Z");
});

test("numbers in the file's notation", () => {
  expect(numberReader({ decimal: ",", thousands: "" })("3,3")).toBe("3.3");
  expect(numberReader({ decimal: ",", thousands: "." })("1.234,5")).toBe("1234.5");
  expect(numberReader({ decimal: ".", thousands: " " })("1\u202f234.5")).toBe("1234.5");
  expect(numberReader({ decimal: ",", thousands: "." })("1.23")).toBeUndefined();
  expect(numberReader({ decimal: ",", thousands: "" })("3.3")).toBeUndefined();
  expect(numberReader({ decimal: ",", thousands: "" })("3,3 mL")).toBeUndefined();
});

test("a word may hold a number, and fill two fields", () => {
  const read = wordReader(
    [
      { word: "Hypochlorit {number} %", means: "naocl", also: { concentration_pct: "{number}" } },
      { word: "", means: "water" },
      { word: "?", means: null },
    ],
    { decimal: ",", thousands: "" },
  );
  expect(read(" hypochlorit  5,25 % ")).toEqual({
    means: "naocl",
    also: { concentration_pct: "5.25" },
  });
  expect(read("")).toEqual({ means: "water", also: {} });
  expect(read("?")).toEqual({ means: null, also: {} });
  expect(read("Hypochlorit 5.25 %")).toBeUndefined();
  expect(read("Hypochlorit %")).toBeUndefined();
});
