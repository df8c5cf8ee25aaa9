import { expect, test } from "vitest";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { clauseOf, explain } from "@/lib/protocol/explain";
import type { JudgedUnit, ListItem } from "@/lib/protocol/judged-unit";
import { outcomeOf } from "@/lib/protocol/outcome";
import type { Values } from "@/lib/records/column";
import { type ExplanationOf, explanationView } from "@/lib/views/explanation";
import { sumWords } from "@/lib/views/sum-words";

// Expected sums and words are worked by hand from the deliveries below.

const named = (id: string) => defaults.find((one) => one.id === id) as Criterion;
const floor = named("hypochlorite-floor");
const delivery = (fields: Values, row: string | null = "irrigation/1"): ListItem => ({
  ...{ row, place: "MB1", rank: 1, loose: false, fields },
});
const naocl = (volume_ml?: number) =>
  delivery({ irrigant: "naocl", ...(volume_ml === undefined ? {} : { volume_ml }) });
const sumOf = (...course: ListItem[]) =>
  sumWords(clauseOf(floor.met, { fields: {}, lists: { course } }), "canal");

test("a total says what is known of it, from how many of those asked for, and what is not recorded", () => {
  expect(sumOf(naocl(6), naocl(7.5))).toBe("13.5 mL, from 2 deliveries");
  expect(sumOf(naocl(6), naocl(7.5), naocl())).toBe(
    "13.5 mL known, from 2 of 3 deliveries; the volume of the third is not recorded",
  );
  expect(sumOf(naocl(6), naocl(), naocl(), delivery({ irrigant: "edta", volume_ml: 2 }))).toBe(
    "6 mL known, from 1 of 3 deliveries; the volume of 2 is not recorded",
  );
  expect(sumOf(naocl(6), delivery({ volume_ml: 2 }))).toBe(
    "6 mL known, from 1 delivery; whether 1 delivery more is asked for cannot be told",
  );
  expect(sumOf(delivery({}, null))).toBe(
    "0 mL known, none recorded is one that is asked for; there may be more that is not recorded",
  );
});

function viewOf(criterion: Criterion, unit: Partial<JudgedUnit>, own = {}) {
  const judged: JudgedUnit = { fields: {}, lists: {}, exclusion: null, exception: null, ...unit };
  const counted = outcomeOf(criterion, judged);
  if (!counted) throw new Error("it is no unit of the criterion");
  const head = { practice: "OAK", practiceName: "Oak", sessionId: "V-1", chair: "1" };
  const of: ExplanationOf = {
    ...{ criterion, canal: "MB1", seq: null, unit: judged, counted, own },
    head: { ...head, day: "2026-07-03" },
    explanation: explain(criterion, judged),
    ...{ rows: [], places: new Map(), mayOpenVisit: true, titleOf: (id: string) => id },
  };
  return explanationView(of);
}
const step = (view: ReturnType<typeof viewOf>, id: string) =>
  view.steps.find((one) => one.id === id);

test("of a unit that is left out the demand is not asked", () => {
  const view = viewOf(named("timer-reset"), { fields: { timer_reset: "no-timer" } });
  expect(view.outcome).toMatch(/^left out/);
  expect(step(view, "met")).toMatchObject({
    says: expect.stringMatching(/not asked/),
    clauses: [],
  });
  expect(step(view, "exception")?.says).toMatch(/not asked/);
  const missed = viewOf(named("timer-reset"), { fields: { timer_reset: "no" } });
  expect(step(missed, "met")).toMatchObject({ says: "No.", settled: true });
});

test("an own reason is in the practice's words, and is on the list", () => {
  const fields = { timer_reset: "no" };
  const own = { "reason/own-power": "Power cut" };
  const view = viewOf(named("timer-reset"), { fields, exception: "own-power" }, own);
  expect(view.outcome).toBe("excepted: Power cut");
  expect(step(view, "exception")?.says).toBe("Yes: Power cut.");
  const other = viewOf(named("timer-reset"), { fields, exception: "own-power" });
  expect(step(other, "exception")?.says).toMatch(/^Yes: power\. It is not on the criterion's list/);
});

test("what is not recorded is said per criterion", () => {
  const view = viewOf(named("main-irrigant"), {});
  expect([view.outcome, view.because]).toEqual([
    "not recorded",
    expect.stringMatching(/never “not met”/),
  ]);
  const record = viewOf(named("length-recorded"), {});
  expect(record.outcome).toBe("not met");
});
