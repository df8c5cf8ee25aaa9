import { describe, expect, test } from "vitest";
import { counts, ofGroup, records, tallies, visit } from "./hand-made";

const isolation = "criterion/isolation";

test("a visit belongs to the quarter of its own practice's clocks", () => {
  const table = records({
    sessions: [
      // 1 July 00:30 in London, as summer time is an hour ahead of UTC.
      visit("V1", { started_at: "2024-06-30T23:30:00.000Z" }),
      // 30 June 23:30 in London.
      visit("V2", { started_at: "2024-06-30T22:30:00.000Z" }),
      // 1 July 00:30 in Auckland, twelve hours ahead of UTC.
      visit("V3", { practice: "SOUTH", started_at: "2024-06-30T12:30:00.000Z" }),
      // 1 October 00:30 in Auckland, thirteen hours ahead by then.
      visit("V4", { practice: "SOUTH", started_at: "2024-09-30T11:30:00.000Z" }),
    ],
  });
  const byPractice = (quarter: string) =>
    tallies(table, isolation, "practice", quarter).map(({ subject, population }) => [
      subject,
      population,
    ]);
  const north = { kind: "practice", code: "NORTH" };
  const south = { kind: "practice", code: "SOUTH" };
  // Worked by hand from the offsets beside the visits.
  expect(byPractice("2024-Q2")).toEqual([[north, 1]]);
  expect(byPractice("2024-Q3")).toEqual([
    [north, 1],
    [south, 1],
  ]);
  expect(byPractice("2024-Q4")).toEqual([[south, 1]]);
});

describe("whose the work is", () => {
  const table = records({
    sessions: [
      visit("V1", { started_at: "2024-08-14T09:00:00.000Z" }), // A is Ann's to the day
      visit("V2", { started_at: "2024-08-15T09:00:00.000Z" }), // nobody's: the code itself
      visit("V3", { started_at: "2024-08-16T09:00:00.000Z" }), // A is Ben's
      visit("V4", { practice: "SOUTH", clinician: "Z" }), // Ann again, at the other practice
    ],
    people: [
      { person: "ann", practice: "NORTH", code: "A", from: "2024-01-01", to: "2024-08-14" },
      { person: "ben", practice: "NORTH", code: "A", from: "2024-08-16" },
      { person: "ann", practice: "SOUTH", code: "Z", from: "2024-08-01" },
    ],
  });

  test("a person at two practices is one, and a code that passes on is split by date", () => {
    // Worked by hand: Ann has V1 and V4 under two codes at two practices, the code A has V2, Ben has V3.
    expect(
      tallies(table, isolation, "clinician").map(({ subject, population }) => [
        subject,
        population,
      ]),
    ).toEqual([
      [{ kind: "clinician", code: "A, Z", practice: undefined, key: "person:ann" }, 2],
      [{ kind: "clinician", code: "A", practice: "NORTH", key: "NORTH/A" }, 1],
      [{ kind: "clinician", code: "A", practice: "NORTH", key: "person:ben" }, 1],
    ]);
  });

  test("the supervisor has no part in it", () => {
    const supervised = records({ sessions: [visit("V1", { supervisor: "B" })] });
    // Worked by hand: the one visit is A's.
    expect(tallies(supervised, isolation, "clinician")).toMatchObject([
      { subject: { code: "A" }, population: 1 },
    ]);
  });

  test("a visit number that two practices have is two visits, and a row goes to the one it names", () => {
    const shared = records({
      sessions: [visit("V1"), visit("V1", { practice: "SOUTH" })],
      steps: [{ session_id: "V1", practice: "SOUTH", step: "dam", status: "done" }],
    });
    // Worked by hand: SOUTH's dam was placed, of NORTH's nothing is known.
    expect(tallies(shared, isolation, "practice")).toMatchObject([
      { subject: { code: "NORTH" }, numerator: 0, notRecorded: 1 },
      { subject: { code: "SOUTH" }, numerator: 1, notRecorded: 0 },
    ]);
  });
});

describe("what a unit stands for", () => {
  test("a canal's course is shared: once for each who worked on it, once for the group", () => {
    const course = records({
      sessions: [
        visit("V1", { started_at: "2024-06-28T09:00:00.000Z", clinician: "A" }),
        visit("V2", { started_at: "2024-07-01T09:00:00.000Z", clinician: "B" }),
        visit("V3", { started_at: "2024-07-02T09:00:00.000Z", clinician: "B" }),
      ],
      canals: [
        { session_id: "V1", canal: "main", preparation: "rotary", filled: false },
        { session_id: "V2", canal: "main", preparation: "rotary", filled: false },
        { session_id: "V3", canal: "main", preparation: "rotary", filled: true },
      ],
      irrigation: ["V1", "V2", "V3"].map((session_id) => ({
        ...{ session_id, canal: "main", seq: 1, irrigant: "naocl", delivery: "syringe" },
        volume_ml: 4,
      })),
    });
    const floor = "criterion/hypochlorite-floor";
    // Worked by hand: 12 mL, filled in July; A's visit was in June, B had two visits.
    expect(counts(ofGroup(course, floor))).toMatchObject({ population: 1, numerator: 1 });
    expect(tallies(course, floor, "clinician")).toMatchObject([
      { subject: { code: "B" }, population: 1, numerator: 1 },
      { subject: { code: "A" }, population: 1, numerator: 1 },
    ]);
  });

  test("a row of several uses counts as so many, in the sums over patients too", () => {
    const use = { session_id: "V1", canal: "main", kind: "rotary" };
    const table = records({
      sessions: [visit("V1")],
      canals: [{ session_id: "V1", canal: "main", preparation: "rotary" }],
      instruments: [
        { ...use, seq: 1, uses: 3, use_number: 1 }, // three met
        { ...use, seq: 2, uses: 2, use_number: 5 }, // two not met
        { ...use, seq: 3 }, // one not recorded
      ],
    });
    const tally = ofGroup(table, "criterion/use-limit");
    // Worked by hand: 3 + 2 + 1.
    expect(counts(tally)).toEqual({
      population: 6,
      excluded: {},
      excepted: {},
      notRecorded: 1,
      numerator: 3,
      denominator: 6,
      notMet: 2,
    });
    // Worked by hand: one patient with 3 of 6.
    expect(tally).toMatchObject({
      clusters: { clusters: 1, events: 3, units: 6, eventsSquared: 9, eventsByUnits: 18 },
    });
  });
});
