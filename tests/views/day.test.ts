import { expect, test } from "vitest";
import { day, moment, month } from "@/lib/views/day";

// Expected words: computed by hand; dates read 3 Jul 2026 by the design's rule.

test("a day has no leading zero and its month's short name", () => {
  expect(day("2026-07-03")).toBe("3 Jul 2026");
  expect(day("2024-02-29")).toBe("29 Feb 2024");
  expect(day("2026-12-31T23:59:59Z")).toBe("31 Dec 2026");
});

test("a month is named from any of its days", () => {
  expect(month("2026-01")).toBe("Jan 2026");
  expect(month("2026-12-31")).toBe("Dec 2026");
});

test("a moment is told in the zone's own clock, summer time and a new day included", () => {
  // GMT and BST: the clocks of Europe/London went forward on 29 Mar 2026 at 01:00 UTC (IANA time zone database).
  expect(moment(new Date("2026-01-05T09:10:00Z"), "Europe/London")).toBe("5 Jan 2026, 09:10");
  expect(moment(new Date("2026-03-29T00:59:00Z"), "Europe/London")).toBe("29 Mar 2026, 00:59");
  expect(moment(new Date("2026-03-29T01:00:00Z"), "Europe/London")).toBe("29 Mar 2026, 02:00");
  expect(moment(new Date("2026-06-30T23:30:00Z"), "Europe/London")).toBe("1 Jul 2026, 00:30");
});
