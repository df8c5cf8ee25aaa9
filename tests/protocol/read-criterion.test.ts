import fc from "fast-check";
import { expect, test } from "vitest";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { readCriterion } from "@/lib/protocol/read-criterion";
import { settled } from "@/lib/views/protocol/edit/editable";
import { arbitraryCriterion } from "./arbitrary-criterion";

// Expected values are the project's own rules of what a criterion may be.

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const own = { ...floor, id: "own-floor" };
const wrongOf = (input: unknown, options = {}) => {
  const result = readCriterion(input, options);
  return "wrong" in result ? result.wrong.map(({ path }) => path) : [];
};

test("every criterion known from the start is read as it is, from JSON too", () => {
  for (const one of defaults) {
    expect(readCriterion(one)).toEqual({ read: one });
    expect(readCriterion(JSON.parse(JSON.stringify(one)))).toEqual({ read: one });
  }
});

test("limits that nobody has set are refused where it is put in force, and only there", () => {
  const refused = defaults.filter((one) => wrongOf(one, { inForce: true }).length > 0);
  expect(refused.map(({ id }) => id)).toEqual(["flow-limit", "speed-torque"]);
  expect(readCriterion(refused[0], { inForce: true })).toEqual({
    wrong: [{ path: "met.atMost", message: "Set the limit." }],
  });
  expect(wrongOf(refused[1], { inForce: true })).toHaveLength(6);
});

test("random criteria are read as they are, or named wrong by a path that is there", () => {
  let read = 0;
  fc.assert(
    fc.property(arbitraryCriterion, (one) => {
      const result = readCriterion(JSON.parse(JSON.stringify(one)));
      if ("read" in result) {
        read += 1;
        expect(result.read).toEqual(one);
      } else
        for (const { path } of result.wrong)
          expect(`${path} ${path.split(".").reduce<unknown>(step, one) !== undefined}`).toMatch(
            /true$|wholeCourse/,
          );
    }),
    { numRuns: 300 },
  );
  expect(read).toBeGreaterThan(30);
});

const step = (part: unknown, key: string) => (part as Record<string, unknown> | undefined)?.[key];

test("a day of a chair is no clinician's, has no canal and no exception", () => {
  const rinse = defaults.find(({ id }) => id === "line-rinse") as Criterion;
  const change = {
    byClinician: true,
    treatmentPopulation: true,
    exceptions: { steps: [], reasons: [] },
  };
  expect(wrongOf({ ...rinse, ...change }).sort()).toEqual([
    "byClinician",
    "exceptions",
    "treatmentPopulation",
  ]);
});

test("order is asked only of lists that have one, and what is known from the start goes on counting what it counts", () => {
  const visit = {
    ...own,
    unit: "visit",
    treatmentPopulation: false,
    population: { all: [] },
    exclusions: [],
  };
  const { wholeCourse: _, ...plain } = visit as Criterion;
  const dam = { field: "preparation", is: "hand" };
  expect(wrongOf({ ...plain, met: { after: "canals", each: dam, comes: dam } })).toEqual(["met"]);
  expect(
    wrongOf({
      ...plain,
      met: { after: "uses", each: { recorded: "lot" }, comes: { recorded: "lot" } },
    }),
  ).toEqual([]);
  expect(wrongOf({ ...plain, id: "hypochlorite-floor", met: { recorded: "pulp" } })).toEqual([
    "unit",
  ]);
});

test("what is too deep or too long is refused, however deep", () => {
  const deep = (levels: number, met: object): object =>
    levels === 0 ? met : { any: [deep(levels - 1, met)] };
  const row = { field: "apex", is: "open" };
  const { wholeCourse: _, ...plain } = own as Criterion;
  expect(wrongOf({ ...plain, met: deep(5, row) })).toEqual([]);
  expect(wrongOf({ ...plain, met: deep(6, row) })).toHaveLength(1);
  expect(wrongOf({ ...plain, met: deep(3000, row) })).toHaveLength(1);
  let known: object = row;
  for (let at = 0; at < 3000; at += 1) known = { not: known };
  expect(wrongOf({ ...plain, met: known })).toHaveLength(1);
  expect(wrongOf({ ...plain, met: { any: Array(80).fill(row) } })).toHaveLength(1);
});

test("settling changes nothing in a criterion that is settled", () => {
  for (const one of defaults) expect(settled(one)).toEqual(one);
});
