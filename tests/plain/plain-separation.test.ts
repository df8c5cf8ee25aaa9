import { describe, expect, test } from "vitest";
import type { Values } from "@/lib/records/column";
import { counts, ofGroup, records, tallies, visit } from "./hand-made";

// Every expected value is worked by hand from the rows above it; beside each row stands what it comes to.

describe("instrument separation", () => {
  const use = (
    session_id: string,
    canal: string,
    seq: number,
    separated?: number,
    others: Values = {},
  ): Values => ({ session_id, canal, seq, kind: "rotary", separated, ...others });
  const canal = (session_id: string, name: string, others: Values = {}): Values => ({
    session_id,
    canal: name,
    preparation: "rotary",
    ...others,
  });
  const table = records({
    // Every visit counts, whatever its treatment or outcome.
    sessions: [
      visit("V1"),
      visit("V2", { outcome: "abandoned" }),
      visit("V3", { treatment: "emergency" }),
      visit("V4"),
    ],
    canals: [
      canal("V1", "MB", { clinician: "B" }),
      canal("V1", "ML"),
      canal("V2", "main"),
      canal("V3", "main", { fragment_on_arrival: true }),
      canal("V4", "B"),
      canal("V4", "P"),
    ],
    instruments: [
      // V1 MB: 5 uses, 1 separated; and one unknown → an event all the same.
      use("V1", "MB", 1, 1, { uses: 5, instrument_id: "i-1" }),
      use("V1", "MB", 2, undefined),
      // V1 ML: 1 use, known, none separated; but one is held (below) → not recorded.
      use("V1", "ML", 1, 0, { instrument_id: "i-1" }),
      // V2: a use that separated, though the visit was abandoned.
      use("V2", "main", 1, 1, { instrument_id: "i-2" }),
      // V3: 1 use, none separated; the fragment was there on arrival and is nobody's.
      use("V3", "main", 1, 0, { instrument_id: "i-3" }),
      // V4 B: unknown → not recorded. P has no row of an instrument → not counted at all.
      use("V4", "B", 1, undefined, { instrument_id: "i-3" }),
    ],
    held: [
      { table: "instruments", session_id: "V1", canal: "ML" },
      // Names a canal that V3 does not have: nobody's.
      { table: "instruments", session_id: "V3", canal: "DB" },
    ],
  });
  const none = { excluded: {}, excepted: {} };

  test("per use", () => {
    // Worked by hand: 5 + 1 + 1 + 1 + 1 + 1 = 10 uses, two of them unknown; two separated, so 2 of 8.
    expect(counts(ofGroup(table, "separation-per-use"))).toEqual({
      ...none,
      population: 10,
      notRecorded: 2,
      numerator: 2,
      denominator: 8,
      notMet: 6,
    });
  });

  test("per canal", () => {
    // Worked by hand: MB and V2 events, V3 free; ML held and B unknown: 2 of 3, two not recorded.
    expect(counts(ofGroup(table, "separation-per-canal"))).toEqual({
      ...none,
      population: 5,
      notRecorded: 2,
      numerator: 2,
      denominator: 3,
      notMet: 1,
    });
  });

  test("per visit", () => {
    // Worked by hand: V1 and V2 events, V3 free, V4 unknown: 2 of 3.
    expect(counts(ofGroup(table, "separation-per-visit"))).toEqual({
      ...none,
      population: 4,
      notRecorded: 1,
      numerator: 2,
      denominator: 3,
      notMet: 1,
    });
  });

  test("per instrument", () => {
    // Worked by hand: i-1 and i-2 separated; of i-3 one use is unknown: 2 of 2, one not recorded.
    expect(counts(ofGroup(table, "separation-per-instrument"))).toEqual({
      ...none,
      population: 3,
      notRecorded: 1,
      numerator: 2,
      denominator: 2,
      notMet: 0,
    });
  });

  test("the work is the canal's clinician's, else the visit's", () => {
    const by = (measure: string) =>
      tallies(table, measure, "clinician").map((one) => [
        one.subject,
        one.population,
        counts(one).numerator,
      ]);
    const clinician = (code: string) => ({
      kind: "clinician",
      code,
      practice: "NORTH",
      key: `NORTH/${code}`,
    });
    // Worked by hand: B worked in MB alone: 5 + 1 uses, one separated; A has the other four, one separated.
    expect(by("separation-per-use")).toEqual([
      [clinician("B"), 6, 1],
      [clinician("A"), 4, 1],
    ]);
    // Worked by hand: i-1 is counted for both, its separation for B; A has i-1, i-2 and i-3, of which i-2 separated.
    expect(by("separation-per-instrument")).toEqual([
      [clinician("B"), 1, 1],
      [clinician("A"), 3, 1],
    ]);
    // Worked by hand: a visit is its own clinician's: all four are A's.
    expect(by("separation-per-visit")).toEqual([[clinician("A"), 4, 2]]);
  });
});
