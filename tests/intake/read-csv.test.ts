import { Readable } from "node:stream";
import { parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvRows } from "@/lib/intake/csv-rows";
import { outcome, readAll, rowsIn } from "./read-text";

// Rows are worked by hand from the text above them, by RFC 4180.

const header = "session_id,canal,preparation,device\n";

describe("a CSV file", () => {
  it.each([
    ["plain", `${header}V-1,MB1,rotary,M2\n`],
    ["with a byte order mark", `\ufeff${header}V-1,MB1,rotary,M2\n`],
    ["without an end of line", `${header}V-1,MB1,rotary,M2`],
    ["with CR LF", `${header}V-1,MB1,rotary,M2\n`.replaceAll("\n", "\r\n")],
    ["with CR", `${header}V-1,MB1,rotary,M2\n`.replaceAll("\n", "\r")],
    ["quoted", `"session_id","canal","preparation","device"\n"V-1","MB1","rotary","M2"\n`],
    [
      "with other case and spaces in the header",
      ` Session_ID ,CANAL,Preparation , device\nV-1, mb1 ,Rotary,M2\n`,
    ],
  ])("%s gives its row", async (_, text) => {
    const rows = await rowsIn("canals.csv", text);
    expect(rows.map((row) => ({ ...row, line: 2 }))).toEqual([
      {
        verdict: "good",
        line: 2,
        values: { session_id: "V-1", canal: "MB1", preparation: "rotary", device: "M2" },
      },
    ]);
  });

  it("numbers lines as an editor does, over blank lines and cells of several lines", async () => {
    const rows = await rowsIn(
      "canals.csv",
      `${header}V-1,MB1,rotary,"two\nlines"\n\nV-2,MB1,rotary,M2\n,,,\nV-3,MB1,cup,M2\n`,
    );
    expect(rows.map((row) => row.line)).toEqual([2, 5, 7]);
    expect(outcome(rows[0])).toMatch(
      /^canals\.csv, line 2, device: found "two lines"; it has a line break/,
    );
    expect(outcome(rows[2])).toMatch(/^canals\.csv, line 7, preparation: found "cup"/);
  });

  it.each([
    ["a cell too few", "V-1,MB1,rotary\n", /line 2: found 3 cells; the header has 4/],
    ["a decimal comma", "V-1,MB1,rotary,M2,5\n", /line 2: found 5 cells; the header has 4/],
    [
      "a NUL",
      "V-1,MB1,rotary,M\0\n",
      /line 2, device: found "M."; it has a line break or another control/,
    ],
    ["a quote never closed", 'V-1,MB1,rotary,"M2\n', /line 2: found a quote that is never closed/],
    [
      "a line of over a million characters",
      `V-1,MB1,rotary,${"x".repeat(1_000_001)}\n`,
      /line 2: found more than 1000000 characters/,
    ],
    [
      "a long cell",
      `V-1,MB1,rotary,${"x".repeat(900_000)}\n`,
      /line 2, device: found "x{60}…"; it is longer/,
    ],
    [
      "another code than UTF-8",
      Buffer.from("V-1,MB1,rotary,M\xfcller\n", "latin1"),
      /save the file in UTF-8/,
    ],
  ])("%s holds its row and no other", async (_, text, sentence) => {
    const file = Buffer.concat([
      Buffer.from(header),
      Buffer.from(text as string),
      Buffer.from("V-2,MB1,rotary,M2\nV-3,MB1,rotary,M2\n"),
    ]);
    const rows = await rowsIn("canals.csv", file);
    expect(rows.map((row) => row.verdict)).toEqual(["held", "good", "good"]);
    expect(rows.map((row) => row.line)).toEqual([2, 3, 4]);
    expect(outcome(rows[0])).toMatch(sentence);
  });

  it("keeps of a row of another length what tells where it belongs", async () => {
    const [row] = await rowsIn(
      "irrigation.csv",
      "session_id,canal,seq,irrigant,volume_ml,delivery\nV-1,MB1,1,naocl,4,5,syringe\n",
    );
    expect(row).toMatchObject({
      verdict: "held",
      key: "V-1 MB1 1",
      session_id: "V-1",
      canal: "MB1",
    });
  });

  it("takes a quote within a cell as it stands", async () => {
    const rows = await rowsIn(
      "canals.csv",
      `${header}V-1,MB1,rotary,5" file\nV-2,MB1,rotary,"M""2"\nV-3,MB1,rotary,"a"b"\n`,
    );
    expect(rows).toMatchObject([
      { values: { device: '5" file' } },
      { values: { device: 'M"2' } },
      { values: { device: 'a"b' } },
    ]);
  });

  it("loses one row and not the file to a quote never closed, even with closed ones far below", async () => {
    const many = Array.from({ length: 30_000 }, (_, place) => `V-${place},MB1,rotary,M2\n`).join(
      "",
    );
    const rows = await rowsIn(
      "canals.csv",
      `${header}V-0,MB1,rotary,"M2\n${many}V-9,MB1,rotary,"M2"\n`,
    );
    expect(rows).toHaveLength(30_002);
    expect(rows.filter((row) => row.verdict === "held").map((row) => row.line)).toEqual([2]);
  });

  it("with a header alone has no rows, and is no trouble", async () => {
    expect(await readAll("canals.csv", header)).toMatchObject([{ table: "canals", rows: [] }]);
  });

  it.each([
    ["nothing in it", "", /^canals\.csv: it is empty/],
    ["blank lines alone", "\n\n \n", /^canals\.csv: it is empty/],
    ["semicolons", "session_id;canal;preparation\nV-1;MB1;rotary\n", /parted by commas/],
    ["UTF-16", Buffer.from(`\ufeff${header}`, "utf16le"), /UTF-8/],
    [
      "a column twice",
      "session_id,canal,preparation,Canal\nV-1,MB1,rotary,MB2\n",
      /the column canal twice/,
    ],
  ])("with %s is refused in one sentence", async (_, content, sentence) => {
    await expect(readAll("canals.csv", content)).rejects.toThrow(sentence);
    await expect(readAll("canals.csv", content)).rejects.toMatchObject({ name: "UnreadableFile" });
  });
});

describe("the cutting of CSV into cells", () => {
  const cell = fc
    .oneof(fc.string({ unit: "binary-ascii" }), fc.stringMatching(/^[a-z,"\n ]{0,6}$/))
    .map((text) => text.replace(/\r/g, ""));

  it("gives back what csv-stringify wrote, as csv-parse does", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { maxLength: 20 }),
        fc.integer({ min: 1, max: 9 }),
        async (rows, size) => {
          const text = stringify(rows);
          const expected: string[][] = parse(text, { skip_empty_lines: true });
          expect(expected).toEqual(rows);
          const cut = await cutInPieces(text, size);
          expect(cut.map((row) => row.cells)).toEqual(rows);
          expect(cut.every((row) => row.broken === undefined)).toBe(true);
        },
      ),
    );
  });
});

async function cutInPieces(text: string, size: number) {
  const bytes = Buffer.from(text);
  const pieces = Array.from({ length: Math.ceil(bytes.length / size) }, (_, place) =>
    bytes.subarray(place * size, (place + 1) * size),
  );
  const found = [];
  for await (const rows of csvRows(Readable.from(pieces, { objectMode: false })))
    found.push(...rows);
  return found;
}
