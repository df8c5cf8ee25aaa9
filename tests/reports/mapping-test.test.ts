import { expect, test } from "vitest";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { digestOf } from "@/lib/reports/mapping-draft";
import { isTested, testOf } from "@/lib/reports/mapping-test";

// Expected values are the project's own rule: any process answers for the one that reads, by what lies beside the file, and one that has
// been silent for 15 seconds is gone.

const draft = { name: "One", tables: [] } as unknown as Mapping;
const other = { name: "One", tables: [{ table: "sessions" }] } as unknown as Mapping;
const digest = digestOf(draft);
const secondsAgo = (seconds: number) => Date.now() - seconds * 1000;

test("a test that another process runs is told of as it is", () => {
  const running = { digest, at: secondsAgo(2), read: 40, expected: 100 };
  expect(testOf({ test: running }, draft)).toEqual({
    ...{ state: "running", says: "40 rows read of some 100", share: 0.4 },
  });
  expect(isTested({ test: running }, draft)).toBe(false);
});

test("one that has lost its process is none, so that it can be begun again; one that is over stays", () => {
  const silent = { digest, at: secondsAgo(20), read: 40 };
  expect(testOf({ test: silent }, draft)).toEqual({ state: "none" });
  const over = { ...silent, counts: [] };
  expect(isTested({ test: over }, draft)).toBe(true);
  expect(testOf({ test: { ...silent, failed: "It is no table." } }, draft)).toEqual({
    ...{ state: "failed", says: "It is no table." },
  });
});

test("a test of another draft is none of this one", () => {
  expect(testOf({ test: { digest, at: secondsAgo(0), read: 1, counts: [] } }, other)).toEqual({
    state: "none",
  });
  expect(testOf({ test: null }, draft)).toEqual({ state: "none" });
});
