import { describe, expect, test } from "vitest";
import type { Values } from "@/lib/records/column";
import { ofGroup, records, values, visit } from "./hand-made";

// Every expected value is worked by hand from the rows above it; beside each row stands what it comes to.

describe("irrigation time and volume of four canals", () => {
  const canal = (name: string, timer_reset?: string): Values => ({
    session_id: "V1",
    canal: name,
    preparation: "rotary",
    timer_reset,
  });
  const delivery = (name: string, seq: number, others: Values): Values => ({
    session_id: "V1",
    canal: name,
    seq,
    irrigant: "naocl",
    delivery: "syringe",
    ...others,
  });
  const table = records({
    sessions: [visit("V1")],
    canals: [
      canal("MB", "yes"),
      canal("ML", "no"),
      canal("D", "yes"),
      canal("DB", "yes"),
      canal("DL", "no"),
      { ...canal("MM"), preparation: "none" },
    ],
    irrigation: [
      // MB: 60 s + 3 mL ÷ 6 mL/min = 30 s → 90 s, of hypochlorite 60 s; 5 mL + 3 mL = 8 mL, of hypochlorite 5 mL.
      delivery("MB", 1, {
        volume_ml: 5,
        duration_s: 60,
        basis: "noted",
        dwell_s: 30,
        activation: "sonic",
        activation_s: 20,
      }),
      delivery("MB", 2, {
        irrigant: "edta",
        volume_ml: 3,
        flow_ml_min: 6,
        basis: "noted",
        dwell_s: 60,
        activation: "none",
      }),
      // ML: read off a timer that was not reset → time not recorded; the 4 mL are written down and stand.
      delivery("ML", 1, {
        irrigant: "edta",
        volume_ml: 4,
        flow_ml_min: 4,
        duration_s: 200,
        basis: "timer",
      }),
      // D: 120 s × 5 mL/min = 10 mL; the other delivery has no time, volume or flow → neither is recorded, not 120 s.
      delivery("D", 1, {
        flow_ml_min: 5,
        duration_s: 120,
        basis: "metered",
        dwell_s: 10,
        activation: "none",
      }),
      delivery("D", 2, { irrigant: "edta" }),
      // DL: the same timer, and no volume derived from it → neither is recorded.
      delivery("DL", 1, { flow_ml_min: 4, duration_s: 30, basis: "timer" }),
      // The whole tooth: no canal's.
      { session_id: "V1", seq: 1, irrigant: "saline", delivery: "syringe", volume_ml: 2 },
    ],
    // DB has no delivery → not recorded. MM was not prepared → left out.
  });
  const excluded = { "not-prepared": 1 };

  test("time: MB alone", () => {
    // Worked by hand: 60 + 30 = 90 s.
    expect(values(ofGroup(table, "irrigation-time"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 4,
      n: 1,
      median: 90,
    });
    // Worked by hand: the first delivery's 60 s.
    expect(values(ofGroup(table, "hypochlorite-time"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 4,
      n: 1,
      median: 60,
    });
  });

  test("volume: MB and ML", () => {
    // Worked by hand: (8 + 4) ÷ 2 = 6 mL.
    expect(values(ofGroup(table, "volume"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 3,
      n: 2,
      median: 6,
    });
    // Worked by hand: 5 mL and, as ML had EDTA alone, 0 mL: 2.5 mL.
    expect(values(ofGroup(table, "hypochlorite-volume"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 3,
      n: 2,
      median: 2.5,
    });
  });

  test("dwell and activation apart", () => {
    // Worked by hand: 30 + 60 = 90 s in MB; ML, D and DL have a delivery without a dwell.
    expect(values(ofGroup(table, "dwell-time"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 4,
      n: 1,
      median: 90,
    });
    // Worked by hand: 20 + 0 = 20 s in MB.
    expect(values(ofGroup(table, "activation-time"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 4,
      n: 1,
      median: 20,
    });
  });

  test("quartiles and bounds", () => {
    // Worked by hand: type 7 of 4 and 8: 4 + ¼·4 = 5 and 4 + ¾·4 = 7; the lowest is 4, the highest 8.
    expect(ofGroup(table, "volume")).toMatchObject({ quartiles: [5, 7], bounds: [4, 8] });
  });

  test("a held delivery makes its canal unknown", () => {
    const held = {
      ...table,
      held: [{ table: "irrigation" as const, session_id: "V1", canal: "MB" }],
    };
    // Worked by hand: of 8 and 4 mL only ML's 4 are left.
    expect(values(ofGroup(held, "volume"))).toEqual({
      population: 6,
      excluded,
      notRecorded: 4,
      n: 1,
      median: 4,
    });
  });
});

describe("volume per visit", () => {
  const table = records({
    sessions: [
      visit("V1"),
      visit("V2"),
      visit("V3", { treatment: "emergency" }),
      visit("V4"),
      visit("V5"),
      visit("V6", { outcome: "abandoned", treatment: "dressing" }),
    ],
    canals: [
      { session_id: "V1", canal: "MB", preparation: "rotary" },
      { session_id: "V1", canal: "D", preparation: "none" },
      { session_id: "V2", canal: "main", preparation: "hand" },
      { session_id: "V5", canal: "main", preparation: "hand" },
    ],
    irrigation: [
      // V1: 3 mL in MB, 1 mL in D though it was not prepared, 2 mL for the whole tooth: 6 mL.
      {
        session_id: "V1",
        canal: "MB",
        seq: 1,
        irrigant: "naocl",
        delivery: "syringe",
        volume_ml: 3,
      },
      {
        session_id: "V1",
        canal: "D",
        seq: 1,
        irrigant: "naocl",
        delivery: "syringe",
        volume_ml: 1,
      },
      { session_id: "V1", seq: 1, irrigant: "saline", delivery: "syringe", volume_ml: 2 },
      // V2: 9 mL, and a held delivery whose canal cannot be read → not recorded.
      {
        session_id: "V2",
        canal: "main",
        seq: 1,
        irrigant: "naocl",
        delivery: "syringe",
        volume_ml: 9,
      },
    ],
    held: [{ table: "irrigation", session_id: "V2" }],
    // V3 emergency, V4 without a prepared canal, V6 abandoned: left out. V5 has no delivery → not recorded.
  });

  test("adds the whole tooth's, and is unknown with a held delivery", () => {
    // Worked by hand: 3 + 1 + 2 = 6 mL.
    expect(values(ofGroup(table, "volume-per-visit"))).toEqual({
      population: 6,
      excluded: { emergency: 1, "not-prepared": 1, abandoned: 1 },
      notRecorded: 2,
      n: 1,
      median: 6,
    });
  });

  test("a held delivery that names no canal leaves the canal's own sum alone", () => {
    // Worked by hand: MB 3 mL and V2's main 9 mL, so 6 mL; V5's canal has none; D is left out.
    expect(values(ofGroup(table, "volume"))).toEqual({
      population: 4,
      excluded: { "not-prepared": 1 },
      notRecorded: 1,
      n: 2,
      median: 6,
    });
  });
});
