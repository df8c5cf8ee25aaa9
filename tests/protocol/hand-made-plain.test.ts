import { describe, expect, test } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import { criterionIds } from "@/lib/records/criterion-id";
import { tableNames } from "@/lib/records/tables";
import { criterionUnits } from "../plain/criteria/criteria";
import { records } from "../plain/hand-made";
import type { State } from "../plain/unit";
import { handMadeCases } from "./hand-made/hand-made";

// Expected values are worked by hand in the cases themselves; here the plain computation is held to them.

describe.each(criterionIds)("%s", (id) => {
  test.each(handMadeCases.filter(({ criterion }) => criterion === id))(
    "$says",
    ({ records: rows, outcomes, clinicians = {}, weights = {} }) => {
      const units = criterionUnits(records(rows), id) ?? [];
      const counted = Object.entries(outcomes).filter(([, outcome]) => outcome !== "not counted");
      expect(Object.fromEntries(units.map((unit) => [unit.id, inWords(unit.state)]))).toEqual(
        Object.fromEntries(counted),
      );
      for (const unit of units) {
        const { clinician, also = [], weight = 1 } = unit;
        const codes = clinician ? [clinician, ...also].map(({ code }) => code) : [];
        const expected = clinicians[unit.id];
        if (expected) expect([...new Set(codes)].sort()).toEqual(expected);
        expect(weight).toBe(weights[unit.id] ?? 1);
      }
    },
  );

  // By the project's own definitions of the criteria.
  test("every outcome that is possible has a case", () => {
    const shown = handMadeCases
      .filter(({ criterion }) => criterion === id)
      .flatMap(({ outcomes }) => Object.values(outcomes))
      .map((outcome) => outcome.replace(/^excepted: .*/, "excepted"));
    expect([...new Set(shown)].sort()).toEqual([...(possible[id] ?? [])].sort());
  });
});

// The project's own rule: what is shown as a record must be one.
test("every row of every case would be accepted by itself", () => {
  const context = {
    zoneOf: () => "UTC",
    pseudonym: (_: string, reference: string) => reference,
    now: new Date(),
  };
  for (const { says, records: rows } of handMadeCases) {
    for (const table of tableNames) {
      for (const values of rows[table] ?? []) {
        const cells = Object.fromEntries(
          Object.entries(values).map(([name, value]) => [
            name,
            typeof value === "boolean" ? (value ? "yes" : "no") : String(value),
          ]),
        );
        const checked = checkRow(table, cells, { file: "hand-made.csv", line: 2 }, context);
        expect(checked, `${says}: ${table}`).toEqual({ verdict: "good", line: 2, values });
      }
    }
  }
});

const settled = ["met", "not met"];
const asked = [...settled, "not recorded", "excepted"];
const treatments = ["abandoned", "emergency", "dressing", "other"].map((one) => `excluded: ${one}`);
const left = [...treatments, "excluded: not-prepared"];
const young = ["excluded: primary-tooth", "excluded: open-apex"];

const possible: Readonly<Record<(typeof criterionIds)[number], readonly string[]>> = {
  isolation: [...asked, "excluded: abandoned", "excluded: not-applicable"],
  "length-recorded": [...settled, ...left],
  "length-confirmed": [...asked, ...treatments, ...young, "not counted"],
  patency: [...asked, ...treatments, "excluded: filling-not-removed", "not counted"],
  "main-irrigant": [...asked, ...left],
  "hypochlorite-floor": [...asked, ...left, ...young, "not counted"],
  chelator: [...asked, ...left, ...young, "not counted"],
  "rinse-after-chelator": [...asked, ...left, "not counted"],
  "no-hypochlorite-chlorhexidine-contact": [...settled, "not recorded", "not counted"],
  "tip-depth": [...asked, ...left, "not counted"],
  "flow-limit": asked,
  activation: [...asked, ...left, "not counted"],
  "timer-reset": [...asked, ...left, "excluded: no-timer"],
  "speed-torque": [...asked, "not counted"],
  "use-limit": asked,
  traceable: settled,
  "separation-managed": [...settled, "not recorded", "not counted"],
  "line-check": [...asked, "not counted"],
  "torque-calibration": [...asked, "excluded: not-applicable", "not counted"],
  "handpiece-care": [...asked, "not counted"],
  "line-rinse": [...settled, "not recorded", "excluded: out-of-service", "not counted"],
  "line-dry": [...settled, "not recorded", "excluded: out-of-service"],
  "record-complete": settled,
};

function inWords(state: State): string {
  if ("excluded" in state) return `excluded: ${state.excluded}`;
  if ("excepted" in state) return `excepted: ${state.excepted}`;
  if ("notRecorded" in state) return "not recorded";
  return "yes" in state && state.yes ? "met" : "not met";
}
