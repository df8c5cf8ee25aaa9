import { expect, test } from "vitest";
import { countedQuarter } from "@/lib/views/protocol/counted-quarter";

// Expected quarters are worked by hand from the days.

test("a criterion is tried on the last quarter that is recorded from end to end", () => {
  const tried = (first: string, last: string) => {
    const { period, words } = countedQuarter(first, last);
    return [period.name, words];
  };
  expect(tried("2024-10-01", "2026-09-30")).toEqual(["2026-Q3", "July to September 2026"]);
  expect(tried("2024-10-01", "2026-10-02")).toEqual(["2026-Q3", "July to September 2026"]);
  // Records that begin on the first Monday of the quarter have all of it, those of June have not.
  expect(tried("2026-04-06", "2026-08-04")).toEqual(["2026-Q2", "April to June 2026"]);
  expect(tried("2026-06-04", "2026-08-04")).toEqual([
    ...["2026-Q3", "July to September 2026 so far, recorded up to 4 Aug 2026"],
  ]);
  expect(tried("2026-08-03", "2026-09-30")).toEqual(["2026-Q3", "July to September 2026"]);
});
