import { expect, test } from "vitest";
import { completenessOf } from "@/lib/audit/completeness";
import type { MedianTally, RateTally } from "@/lib/measures/tally";
import { quarter } from "@/lib/records/period";
import { completenessLines } from "@/lib/views/completeness-lines";
import { measured } from "./measured";

// Expected counts: computed by hand.
const counted = {
  subject: { kind: "group" },
  period: quarter(2026, 3),
  excluded: {},
  excepted: {},
} as const;
const order = { median: null, quartiles: null, bounds: null, clustered: null };
const median = (n: number, notRecorded: number): MedianTally => ({
  ...counted,
  ...order,
  kind: "median",
  measure: "volume",
  population: n + notRecorded,
  n,
  notRecorded,
});
const rate = (measure: string, denominator: number, notRecorded: number): RateTally => ({
  ...counted,
  kind: "rate",
  clusters: null,
  ...measured(measure),
  population: denominator,
  numerator: 0,
  denominator,
  notMet: 0,
  notRecorded,
});

test("a criterion counts what is not recorded in its denominator, other measures leave it out", () => {
  expect(completenessOf(median(90, 10))).toMatchObject({
    recorded: 90,
    due: 100,
    share: 0.9,
    floor: null,
  });
  expect(completenessOf(rate("separation-per-use", 95, 5))).toMatchObject({
    recorded: 95,
    due: 100,
    share: 0.95,
  });
  expect(completenessOf(rate("criterion/isolation", 100, 5))).toMatchObject({
    recorded: 95,
    due: 100,
    floor: 0.9,
  });
});

test("nothing due has no share, and is not complete or incomplete", () => {
  const [line] = completenessLines([completenessOf(median(0, 0))]);
  expect(line).toMatchObject({
    recorded: "0 of 0 canals",
    share: "nothing due",
    underFloor: false,
  });
});

test("under the floor is said; exactly on it is not under it", () => {
  const [under, on] = completenessLines([
    completenessOf(rate("criterion/isolation", 100, 11)),
    completenessOf(rate("criterion/isolation", 100, 10)),
  ]);
  expect(under).toMatchObject({
    underFloor: true,
    note: "under the floor of 90 %: not assessable",
  });
  expect(on).toMatchObject({ underFloor: false, note: "floor 90 %" });
});
