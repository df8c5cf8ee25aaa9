import { describe, expect, test } from "vitest";
import type { Values } from "@/lib/records/column";
import { counts, ofGroup, records, tallies, visit } from "./hand-made";

// Every expected value is worked by hand from the rows above it; beside each row stands what it comes to.

describe("timer reset and length, by canal", () => {
  const canal = (name: string, others: Values): Values => ({
    session_id: "V1",
    canal: name,
    preparation: "rotary",
    ...others,
  });
  const table = records({
    sessions: [visit("V1"), visit("V2", { treatment: "dressing" })],
    canals: [
      canal("MB1", { timer_reset: "yes", working_length_mm: 20, length_method: "locator" }), // met; met
      canal("MB2", { timer_reset: "no", working_length_mm: 20 }), // not met; not met
      canal("MB3", { timer_reset: "no" }), // excepted; not met
      canal("ML", {}), // not recorded; not met
      canal("MM", {}), // no evidence, but a coded reason: excepted; not met
      canal("DB", { timer_reset: "no-timer", length_method: "estimate" }), // left out; not met
      canal("DL", { timer_reset: "yes", preparation: "none" }), // left out; left out
      { session_id: "V2", canal: "main", preparation: "hand", timer_reset: "no" }, // left out; left out
    ],
    exceptions: [
      { session_id: "V1", canal: "MB3", criterion: "timer-reset", reason: "equipment-failure" },
      { session_id: "V1", canal: "MM", criterion: "timer-reset", reason: "equipment-failure" },
      // A reason beside a canal that met it, or that is left out, changes nothing.
      { session_id: "V1", canal: "MB1", criterion: "timer-reset", reason: "equipment-failure" },
      { session_id: "V1", canal: "DB", criterion: "timer-reset", reason: "equipment-failure" },
      // The criterion takes no exception.
      { session_id: "V1", canal: "MB2", criterion: "length-recorded", reason: "other" },
    ],
  });

  test("timer reset", () => {
    // Worked by hand: 8 canals − 3 left out − 2 excepted = 3, of which MB1 met it and ML is not recorded.
    expect(counts(ofGroup(table, "criterion/timer-reset"))).toEqual({
      population: 8,
      excluded: { "no-timer": 1, "not-prepared": 1, dressing: 1 },
      excepted: { "equipment-failure": 2 },
      notRecorded: 1,
      numerator: 1,
      denominator: 3,
      notMet: 1,
    });
  });

  test("length recorded: missing is not met, never not recorded", () => {
    // Worked by hand: 8 − 2 left out = 6, of which MB1 alone has both.
    expect(counts(ofGroup(table, "criterion/length-recorded"))).toEqual({
      population: 8,
      excluded: { "not-prepared": 1, dressing: 1 },
      excepted: {},
      notRecorded: 0,
      numerator: 1,
      denominator: 6,
      notMet: 5,
    });
  });

  test("a visit's exception serves its canals, the canal's own goes before it", () => {
    const whole = { session_id: "V1", criterion: "timer-reset", reason: "other" };
    const tally = ofGroup(
      { ...table, exceptions: [...table.exceptions, whole] },
      "criterion/timer-reset",
    );
    // Worked by hand: MB2 and ML are now excepted for the visit's reason, MB3 and MM keep their own.
    expect(tally.excepted).toEqual({ "equipment-failure": 2, other: 2 });
  });
});

test("isolation, by visit", () => {
  const dam = (session_id: string, status: string, reason?: string): Values => ({
    session_id,
    step: "dam",
    status,
    reason,
  });
  const table = records({
    sessions: ["V1", "V2", "V3", "V4", "V5", "V6", "V7"].map((id) =>
      visit(id, id === "V6" ? { outcome: "abandoned" } : { treatment: "emergency" }),
    ),
    canals: [{ session_id: "V5", canal: "main", preparation: "none" }],
    steps: [
      dam("V1", "done"), // met: every visit counts, an emergency too
      dam("V2", "not-done"), // not met
      dam("V3", "excepted", "not-possible"), // excepted
      dam("V4", "not-applicable"), // left out
      { ...dam("V5", "done"), canal: "main" }, // a canal's step is not the visit's: not recorded
      dam("V6", "done"), // abandoned: left out
      dam("V7", "not-done"), // excepted by the exceptions table
    ],
    exceptions: [
      { session_id: "V7", criterion: "isolation", reason: "allergy" },
      { session_id: "V5", canal: "main", criterion: "isolation", reason: "allergy" },
    ],
  });
  // Worked by hand: 7 − 2 left out − 2 excepted = 3, of which V1 met it, V2 did not, V5 is not recorded.
  expect(counts(ofGroup(table, "criterion/isolation"))).toEqual({
    population: 7,
    excluded: { "not-applicable": 1, abandoned: 1 },
    excepted: { "not-possible": 1, allergy: 1 },
    notRecorded: 1,
    numerator: 1,
    denominator: 3,
    notMet: 1,
  });
});

describe("line rinse, by chair and day", () => {
  const rinse = (day: string, status: string, duration_s?: number, device?: string): Values => ({
    practice: "NORTH",
    chair: "1",
    day,
    task: "line-rinse",
    status,
    duration_s,
    device,
  });
  const days = ["01", "02", "03", "04", "05", "06", "07", "08"].map((day) => `2024-08-${day}`);
  const [d1 = "", d2 = "", d3 = "", d4 = "", d5 = "", d6 = "", d7 = ""] = days;
  const visits = days.flatMap((day, place) => [
    visit(`A${place}`, { started_at: `${day}T08:00:00.000Z`, outcome: "abandoned" }),
    visit(`B${place}`, { started_at: `${day}T10:00:00.000Z` }),
  ]);
  const table = records({
    // Two visits a day with a continuous delivery, and one in chair 2 with a syringe: eight chair-days.
    sessions: [...visits, visit("S", { chair: "2" })],
    irrigation: [
      ...visits.map(({ session_id }) => ({
        session_id,
        seq: 1,
        irrigant: "naocl",
        delivery: "continuous",
      })),
      { session_id: "S", seq: 1, irrigant: "naocl", delivery: "syringe" },
    ],
    upkeep: [
      rinse(d1, "done", 30), // met
      rinse(d2, "done", 29), // not met
      rinse(d3, "done"), // not recorded: for how long?
      rinse(d4, "out-of-service"), // left out
      rinse(d5, "done", 40, "M1"),
      rinse(d5, "not-done", undefined, "M2"), // one device not done: not met
      rinse(d6, "done", undefined, "M1"),
      rinse(d6, "out-of-service", 10, "M2"), // the device out of service is left out, the other not recorded
      rinse(d7, "done", 45, "M1"),
      rinse(d7, "out-of-service", undefined, "M2"), // the other met
      { ...rinse("2024-08-08", "done", 60), task: "line-dry" }, // another task: no row, not recorded
    ],
  });

  test("for the group", () => {
    // Worked by hand: 8 − 1 left out = 7: days 1 and 7 met, 2 and 5 not, 3, 6 and 8 not recorded.
    expect(counts(ofGroup(table, "criterion/line-rinse"))).toEqual({
      population: 8,
      excluded: { "out-of-service": 1 },
      excepted: {},
      notRecorded: 3,
      numerator: 2,
      denominator: 7,
      notMet: 2,
    });
  });

  test("by chair, and by no clinician", () => {
    // Worked by hand: chair 2 had a syringe only.
    expect(
      tallies(table, "criterion/line-rinse", "chair").map((one) => [one.subject, one.population]),
    ).toEqual([[{ kind: "chair", code: "1", practice: "NORTH" }, 8]]);
    expect(tallies(table, "criterion/line-rinse", "clinician")).toEqual([]);
  });
});
