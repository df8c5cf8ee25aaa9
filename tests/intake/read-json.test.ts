import { describe, expect, it } from "vitest";
import { outcome, readAll, right, rowsIn } from "./read-text";

// Rows are worked by hand from the text above them, by RFC 8259.

const row = { session_id: "V-1", canal: "MB1", preparation: "rotary" };

describe("a JSON array", () => {
  it("reads texts, numbers, true, false and null", async () => {
    const rows = await rowsIn(
      "canals.json",
      JSON.stringify([
        { ...row, working_length_mm: 20.5, filled: true, fragment_on_arrival: false, device: null },
      ]),
    );
    expect(rows).toEqual([
      {
        verdict: "good",
        line: 1,
        values: { ...row, working_length_mm: 20.5, filled: true, fragment_on_arrival: false },
      },
    ]);
  });

  it("numbers its rows by item, whatever its lines", async () => {
    const rows = await rowsIn(
      "canals.json",
      `\ufeff [\n\n${JSON.stringify(row, null, 2)},\n{"session_id": "V-2"}\n]\n`,
    );
    expect(rows.map((one) => [one.line, one.verdict])).toEqual([
      [1, "good"],
      [2, "held"],
    ]);
  });

  const other = JSON.stringify({ ...row, session_id: "V-9" });
  it.each([
    [
      "a nested value",
      '{"session_id": "V-1", "canal": ["MB1"], "preparation": "rotary"}',
      /line 1, canal: found "something nested"/,
    ],
    ["a number", "7", /found something else than a row/],
    ["a text with a comma and a bracket", '"a],[{"', /found something else than a row/],
    ["an array", '[1, {"a": 2}]', /found something else than a row/],
    ["null", "null", /found something else than a row/],
    ["a mistake", '{"session_id": V-1}', /cannot be read as JSON/],
    ["a quote never closed", '{"session_id": "V-1}\n', /cannot be read as JSON/],
    [
      "a number too long to be exact",
      '{"session_id": 12345678901234567890, "canal": "MB1", "preparation": "rotary"}',
      /put it in quotes/,
    ],
    [
      "a column twice",
      '{"session_id": "V-1", "canal": "MB1", "Canal": "MB2", "preparation": "rotary"}',
      /the column twice/,
    ],
    [
      "more than a million characters",
      `{"session_id": "${"x".repeat(1_000_001)}"}`,
      /too long for a row/,
    ],
    ["no columns", "{}", /session_id: nothing there/],
    [
      "half a letter",
      '{"session_id": "V\\ud800", "canal": "MB1", "preparation": "rotary"}',
      /cannot be read; save/,
    ],
  ])("%s holds its row and no other", async (_, item, sentence) => {
    const rows = await rowsIn("canals.json", `[${item}, ${other}]`);
    expect(rows.map((one) => one.verdict)).toEqual(["held", "good"]);
    expect(outcome(rows[0])).toMatch(sentence);
    expect(rows[1]).toMatchObject({ line: 2, values: { session_id: "V-9" } });
  });

  it("passes over what no field takes, nested or not", async () => {
    const [sheet] = await readAll(
      "canals.json",
      JSON.stringify([
        { ...row, notes: { by: "x" } },
        { ...row, __proto__x: 1 },
      ]),
    );
    expect(sheet?.rows.map((one) => one.verdict)).toEqual(["good", "good"]);
    expect(sheet?.ignored).toEqual(["__proto__x"]);
  });

  it.each([
    [
      "cut off within an item",
      `[${other}, {"session_id": "V`,
      [
        [1, "good"],
        [2, "held"],
        [3, "held"],
      ],
      /cut off/,
    ],
    [
      "cut off between items",
      `[${other},`,
      [
        [1, "good"],
        [2, "held"],
      ],
      /cut off/,
    ],
    [
      "followed by text",
      `[${other}] more`,
      [
        [1, "good"],
        [2, "held"],
      ],
      /one array/,
    ],
  ])("%s ends with a row that says so", async (_, text, verdicts, sentence) => {
    const rows = await rowsIn("canals.json", text);
    expect(rows.map((one) => [one.line, one.verdict])).toEqual(verdicts);
    expect(outcome(rows.at(-1))).toMatch(sentence);
  });

  it("with nothing in it has no rows", async () => {
    expect(await readAll("incidents.json", "[]")).toMatchObject([{ table: "incidents", rows: [] }]);
  });

  it.each(["{}", "true", "", "\ufeff", "<a>"])("%j is refused", async (text) => {
    await expect(readAll("canals.json", text)).rejects.toThrow(
      /^canals\.json: it is no JSON array of rows/,
    );
  });
});

describe("NDJSON", () => {
  it("reads one object a line and numbers rows by line", async () => {
    const rows = await rowsIn(
      "canals.ndjson",
      `${JSON.stringify(row)}\r\n\r\n{"session_id":\n${JSON.stringify({ ...row, session_id: "V-2" })}`,
    );
    expect(rows.map((one) => [one.line, one.verdict])).toEqual([
      [1, "good"],
      [3, "held"],
      [4, "good"],
    ]);
  });

  it("holds a line of over a million characters and no other", async () => {
    const rows = await rowsIn(
      "canals.ndjson",
      `{"session_id": "${"x".repeat(3_000_000)}"}\n${JSON.stringify(row)}\n`,
    );
    expect(rows.map((one) => one.verdict)).toEqual(["held", "good"]);
  });

  it("with nothing in it is refused", async () => {
    await expect(readAll("canals.ndjson", "\n")).rejects.toThrow(/it is empty/);
  });

  it("finds its table by the columns of any of its first rows", async () => {
    const [sheet] = await readAll("export.ndjson", `{}\n${JSON.stringify(right.irrigation)}\n`);
    expect(sheet).toMatchObject({ table: "irrigation" });
  });
});
