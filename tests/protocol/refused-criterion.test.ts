import { expect, test } from "vitest";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { readCriterion } from "@/lib/protocol/read-criterion";

// Expected values are the project's own rules of what a criterion may be.

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const own = { ...floor, id: "own-floor" };
const filled = { field: "filled", is: true };

test.each<[string, object, string]>([
  ["an id that is neither known nor own", { id: "floor" }, "id"],
  ["an own id in capitals", { id: "own-Floor" }, "id"],
  ["no title", { title: "  " }, "title"],
  ["a NUL in a text", { statement: "a\u0000b" }, "statement"],
  ["half a character", { source: "\ud800" }, "source"],
  ["a target of none", { target: 0 }, "target"],
  ["a target over all", { target: 1.1 }, "target"],
  ["a target that is no number", { target: "0.9" }, "target"],
  ["a floor under none", { completenessFloor: -0.1 }, "completenessFloor"],
  ["an unknown unit", { unit: "tooth" }, "unit"],
  ["something more", { more: 1 }, ""],
  [
    "a reason that is no code",
    { exceptions: { steps: [], reasons: ["Not tolerated"] } },
    "exceptions.reasons.0",
  ],
  [
    "a step that there is not",
    { exceptions: { steps: ["photo"], reasons: [] } },
    "exceptions.steps.0",
  ],
  [
    "an unknown field",
    {
      population: { all: [filled, { field: "colour", is: "red" }] },
    },
    "population.all.1.field",
  ],
  [
    "a field of another unit",
    {
      population: { all: [filled, { field: "lot", is: "1" }] },
    },
    "population.all.1.field",
  ],
  [
    "a choice that there is not",
    {
      population: { all: [filled, { field: "apex", is: "ajar" }] },
    },
    "population.all.1.is",
  ],
  [
    "a limit on a choice",
    {
      population: { all: [filled, { field: "apex", atLeast: 1 }] },
    },
    "population.all.1.atLeast",
  ],
  [
    "yes for a number",
    {
      population: { all: [filled, { field: "curvature_deg", is: true }] },
    },
    "population.all.1.is",
  ],
  [
    "a limit below 0",
    { met: { total: ["volume_ml"], of: "course", that: { all: [] }, atLeast: -1 } },
    "met.atLeast",
  ],
  [
    "a limit that is no number",
    { met: { total: ["volume_ml"], of: "course", that: { all: [] }, atLeast: Number.NaN } },
    "met.atLeast",
  ],
  [
    "two ends at once",
    { met: { total: ["volume_ml"], of: "course", that: { all: [] }, atLeast: 1, atMost: 2 } },
    "met",
  ],
  [
    "adding up what is no number",
    { met: { total: ["irrigant"], of: "course", that: { all: [] }, atLeast: 1 } },
    "met.total",
  ],
  [
    "adding up different units",
    { met: { total: ["volume_ml", "dwell_s"], of: "course", that: { all: [] }, atLeast: 1 } },
    "met.total",
  ],
  [
    "adding up one field twice",
    { met: { total: ["dwell_s", "dwell_s"], of: "course", that: { all: [] }, atLeast: 1 } },
    "met.total",
  ],
  ["a list that there is not", { met: { some: "upkeep/line-rinse", that: { all: [] } } }, "met"],
  [
    "a list within a list",
    { met: { some: "course", that: { some: "course", that: { all: [] } } } },
    "met.that",
  ],
  [
    "a step of a list's item",
    { met: { some: "course", that: { field: "step/dam", is: "done" } } },
    "met.that.field",
  ],
  [
    "every one, of which nothing",
    { met: { every: "course", that: { all: [] }, are: { all: [] } } },
    "met.are",
  ],
  ["nothing demanded", { met: { all: [{ all: [] }] } }, "met"],
  ["one of none", { met: { any: [] } }, "met.any"],
  ["no condition at all", { met: "volume >= 10" }, "met"],
  ["a whole course without its filling", { population: { all: [] } }, "population"],
  [
    "what other criteria lack",
    {
      unit: "visit",
      treatmentPopulation: false,
      population: { all: [] },
      exclusions: [],
      met: { some: "gaps", that: { all: [] } },
    },
    "met",
  ],
  [
    "an exclusion of everything",
    { exclusions: [{ reason: "all", inWords: "all", when: { all: [] } }] },
    "exclusions.0.when",
  ],
  [
    "a reason twice",
    { exclusions: [...floor.exclusions, ...floor.exclusions] },
    "exclusions.2.reason",
  ],
])("%s is refused", (_, change, path) => {
  const result = readCriterion({ ...own, ...change });
  expect("wrong" in result ? result.wrong.map((one) => one.path) : []).toContain(path);
});
