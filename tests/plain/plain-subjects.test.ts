import { describe, expect, test } from "vitest";
import { records, tallies, visit } from "./hand-made";

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
