import { describe, expect, test } from "vitest";
import { families } from "./families";
import { compare } from "./family";

// Every expected value was computed with the command in its file under tests/data/reference.
describe("R, SciPy and statsmodels are met to 1e-9, relative to values over 1", () => {
  for (const family of families) {
    test(`for ${family.file}, on 200 cases or more.`, ({ annotate }) => {
      const { cases, pairs, absolute, faults } = compare(family);
      expect(cases).toBeGreaterThanOrEqual(200);
      expect(pairs).toBeGreaterThanOrEqual(cases);
      expect(faults).toEqual([]);
      annotate(`largest disagreement ${absolute.toExponential(1)} in ${pairs} numbers`);
    });
  }
});
