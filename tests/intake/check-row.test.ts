import { describe, expect, it } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import type { TableName } from "@/lib/records/tables";
import { context, outcome, right } from "./read-text";

const place = { file: "file.csv", line: 42 };
type Right = keyof typeof right;

// Expected: the record format's own rules (the table of columns), unless a line says otherwise.
describe("a cell that is right", () => {
  it.each<[Right, string, string, unknown]>([
    ["irrigation", "volume_ml", "4.5", 4.5],
    ["irrigation", "volume_ml", " 0 ", 0],
    ["irrigation", "volume_ml", "100", 100],
    ["irrigation", "volume_ml", "-0", 0],
    ["irrigation", "volume_ml", ".5", 0.5],
    ["irrigation", "tip_short_mm", "-5", -5],
    ["irrigation", "flow_ml_min", "60", 60],
    ["irrigation", "irrigant", "NaOCl", "naocl"],
    ["irrigation", "concentration_pct", "3%", 3],
    ["canals", "filled", "YES", true],
    ["canals", "filled", "No", false],
    ["canals", "timer_reset", "no-timer", "no-timer"],
    ["canals", "canal", "mb2", "MB2"],
    ["canals", "canal", "unknown-1", "unknown-1"],
    ["canals", "apical_size", "30", 30],
    ["instruments", "separated", "no", 0],
    ["instruments", "separated", "yes", 1],
    ["instruments", "separated", "1", 1],
    ["followups", "day", "2024-02-29", "2024-02-29"],
    ["followups", "day", "2026-11-25", "2026-11-25"],
    ["sessions", "case_id", "K-310", "K-310"],
  ])("%s.%s %j is read as %j", (table, column, text, value) => {
    const row = checkRow(table, { ...right[table], [column]: text }, place, context);
    expect(outcome(row)).toBe("good");
    expect(row).toMatchObject({ values: { [column]: value } });
  });

  it.each(Object.keys(right) as Right[])(
    "and an empty one of %s is not recorded, neither no nor 0",
    (table) => {
      const row = checkRow(
        table,
        { ...right[table], practice: "", supervisor: " ", filled: "", volume_ml: "" },
        place,
        context,
      );
      if (row.verdict === "good") expect(Object.values(row.values)).not.toContain(undefined);
      const one = checkRow(
        "canals",
        { ...right.canals, filled: " ", working_length_mm: "" },
        place,
        context,
      );
      expect(one).toEqual({
        verdict: "good",
        line: 42,
        values: { session_id: "V-1", canal: "MB1", preparation: "rotary" },
      });
    },
  );
});

describe("a cell that is wrong holds its row and says what would be right", () => {
  it.each<[Right, string, string, RegExp]>([
    ["irrigation", "volume_ml", "-3", /found "-3"; write a number from 0 to 100 mL\.$/],
    ["irrigation", "volume_ml", "100.5", /from 0 to 100 mL/],
    ["irrigation", "volume_ml", "3,5", /with a point, as 3\.5\.$/],
    ["irrigation", "volume_ml", "1,000.5", /write a number/],
    ["irrigation", "volume_ml", "1 000", /write a number/],
    ["irrigation", "volume_ml", "NaN", /write a number/],
    ["irrigation", "volume_ml", "Infinity", /write a number/],
    ["irrigation", "volume_ml", "0x10", /write a number/],
    ["irrigation", "volume_ml", "1e999", /write a number/],
    ["irrigation", "volume_ml", "3 mL", /write a number/],
    ["irrigation", "volume_ml", "३", /write a number/],
    ["irrigation", "volume_ml", "5%", /write a number/],
    ["irrigation", "flow_ml_min", "0", /over 0 and up to 60/],
    ["irrigation", "tip_short_mm", "-5.1", /from -5 to 30 mm/],
    ["irrigation", "irrigant", "bleech", /write one of naocl, edta/],
    ["irrigation", "seq", "1.5", /whole number/],
    ["canals", "filled", "x", /write yes or no/],
    ["canals", "filled", "1", /write yes or no/],
    ["canals", "filled", "true", /write yes or no/],
    ["canals", "canal", "QQ", /canal's name \(MB, MB1/],
    ["canals", "apical_size", "145", /from 6 to 140/],
    ["canals", "device", "a\nb", /line break/],
    ["canals", "device", "x".repeat(201), /longer than 200/],
    ["canals", "device", "#REF!", /formula/],
    ["canals", "device", "M\ufffdller", /UTF-8/],
    ["instruments", "separated", "perhaps", /yes, no or a whole number/],
    ["followups", "day", "2026-02-29", /day of the calendar/],
    ["followups", "day", "03/07/2026", /day of the calendar/],
    ["followups", "day", "2027-01-01", /still to come/],
    ["followups", "day", "1989-12-31", /before 1990/],
    ["canals", "session_id", "", /nothing there; it is required/],
  ])("%s.%s %j", (table, column, text, sentence) => {
    const row = checkRow(table, { ...right[table], [column]: text }, place, context);
    expect(outcome(row)).toMatch(sentence);
    expect(outcome(row)).toMatch(new RegExp(`^file\\.csv, line 42, ${column}: `));
  });

  it("found text longer than 60 characters is shortened, never within a letter of two units", () => {
    const row = checkRow("canals", { ...right.canals, apex: "😀".repeat(70) }, place, context);
    expect(row).toMatchObject({ reasons: [{ column: "apex", found: `${"😀".repeat(60)}…` }] });
  });

  it("all problems of a row are told, not the first alone", () => {
    const row = checkRow(
      "irrigation",
      {
        session_id: "V-1",
        canal: "QQ",
        seq: "1.5",
        irrigant: "",
        volume_ml: "lots",
        delivery: "cup",
      },
      place,
      context,
    );
    const columns = row.verdict === "held" && row.reasons.map((reason) => reason.column);
    expect(columns).toEqual(["canal", "seq", "irrigant", "volume_ml", "delivery"]);
  });

  it("what PostgreSQL cannot store is replaced in what is kept", () => {
    const row = checkRow(
      "canals",
      { ...right.canals, session_id: "V\0-1", device: "a\ud800b" },
      place,
      context,
    );
    expect(row).toMatchObject({
      verdict: "held",
      key: "V\ufffd-1 MB1",
      raw: { session_id: "V\ufffd-1", device: "a\ufffdb" },
    });
    expect(JSON.stringify(row)).not.toMatch(/\\u0000|\\ud800/);
  });
});

describe("a held row tells where it belongs", () => {
  it.each<[TableName, Record<string, string>, object]>([
    [
      "irrigation",
      { ...right.irrigation, practice: "NORTH", volume_ml: "-3" },
      { key: "V-1 MB1 1", practice: "NORTH", session_id: "V-1", canal: "MB1" },
    ],
    [
      "irrigation",
      { ...right.irrigation, canal: "", volume_ml: "-3" },
      { key: "V-1 1", session_id: "V-1", canal: "" },
    ],
    [
      "steps",
      { session_id: "V-1", step: "dam", status: "perhaps" },
      { key: "V-1 dam", session_id: "V-1", canal: "" },
    ],
  ])("%s %j", (table, cells, expected) => {
    expect(checkRow(table, cells, place, context)).toMatchObject(expected);
  });

  it("but not by a canal's name that is none", () => {
    expect(
      checkRow("irrigation", { ...right.irrigation, canal: "QQ" }, place, context),
    ).not.toHaveProperty("canal");
  });
});

describe("columns that must agree", () => {
  it.each<[Right, Record<string, string>, RegExp]>([
    ["sessions", { ended_at: "2026-07-03T09:09:59+01:00" }, /ended_at: .*ends before it starts/],
    ["sessions", { ended_at: "2026-07-03T08:11:00Z" }, /^good$/],
    ["sessions", { ended_at: "2026-07-04T09:10:01+01:00" }, /longer than a day/],
    ["sessions", { ended_at: "2026-07-04T09:10:00+01:00" }, /^good$/],
    ["sessions", { tooth: "30", tooth_notation: "universal" }, /^good$/],
    ["sessions", { tooth: "58" }, /no such tooth in fdi/],
    ["sessions", { tooth: "19" }, /no such tooth in fdi notation, but there is in universal/],
    ["sessions", { tooth: "UR6" }, /but there is in palmer/],
    [
      "sessions",
      { tooth: "33", tooth_notation: "universal" },
      /no such tooth in universal notation, but there is in fdi/,
    ],
    [
      "sessions",
      { tooth: "16", tooth_notation: "" },
      /it is a tooth in fdi and in universal, and not the same one; write fdi, universal or palmer/,
    ],
    [
      "sessions",
      { tooth: "46", tooth_notation: "" },
      /tooth_notation: nothing there; it is required/,
    ],
    [
      "sessions",
      { tooth: "46", tooth_notation: "iso" },
      /tooth_notation: found "iso"; write one of fdi, universal, palmer/,
    ],
    ["instruments", { uses: "3", separated: "2" }, /^good$/],
    ["instruments", { uses: "3", separated: "no" }, /^good$/],
    ["instruments", { uses: "3", separated: "yes" }, /how many of them/],
    ["instruments", { uses: "3", separated: "4" }, /no more than that/],
    ["instruments", { separated: "2" }, /no more than that/],
    ["steps", { status: "excepted" }, /reason: nothing there/],
    ["steps", { status: "excepted", reason: "not-possible" }, /^good$/],
    ["people", { to: "2025-03-31" }, /before from/],
    ["people", { to: "2025-04-01" }, /^good$/],
  ])("%s with %j: %s", (table, cells, expected) => {
    expect(outcome(checkRow(table, { ...right[table], ...cells }, place, context))).toMatch(
      expected,
    );
  });

  it("a tooth is kept by ISO 3950 whatever its notation (46 is universal 30, common practice)", () => {
    const row = checkRow(
      "sessions",
      { ...right.sessions, tooth: "30", tooth_notation: "universal" },
      place,
      context,
    );
    expect(row).toMatchObject({ values: { tooth: "46", tooth_notation: "universal" } });
  });
});
