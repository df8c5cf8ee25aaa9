import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { outcome, readAll, right, rowsIn } from "./read-text";
import { inlineRow, workbookOf, writeZip } from "./write-zip";

const header = inlineRow([
  "session_id",
  "canal",
  "seq",
  "irrigant",
  "delivery",
  "started_at",
  "concentration_pct",
]);
/** Cell formats 0 plain, 1 date and time (14–22 by ECMA-376, 18.8.30), 2 an own date, 3 and 4 percentages, 5 an own number. */
const styles = `<numFmts><numFmt numFmtId="164" formatCode="[$-409]dd\\ mmm\\ yyyy\\ hh:mm"/><numFmt numFmtId="165" formatCode="0.0%"/><numFmt numFmtId="166" formatCode="0.0&quot; days&quot;"/></numFmts>
  <cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>
  <cellXfs>${[0, 22, 164, 9, 165, 166].map((format) => `<xf numFmtId="${format}"/>`).join("")}</cellXfs>`;

function delivery(started: string, concentration = ""): string {
  return `<row r="7">${["V-1", "MB1", "1", "naocl", "syringe"].map((cell) => `<c t="str"><v>${cell}</v></c>`).join("")}${started}${concentration}</row>`;
}

describe("a workbook's cells", () => {
  // Serial 46206.390625 of the 1900 system is 2026-07-03 09:22:30: computed (46206 − 25569 days after 1970-01-01).
  it.each([
    [
      "a date and time by a built-in format",
      `<c s="1"><v>46206.390625</v></c>`,
      "",
      "2026-07-03T08:22:30.000Z",
    ],
    [
      "a date and time by an own format",
      `<c s="2"><v>46206.390625</v></c>`,
      "",
      "2026-07-03T08:22:30.000Z",
    ],
    [
      "counted from 1904",
      `<c s="1"><v>44744.390625</v></c>`,
      `<workbookPr date1904="1"/>`,
      "2026-07-03T08:22:30.000Z",
    ],
    [
      "a date cell of ISO text",
      `<c t="d"><v>2026-07-03T09:22:30</v></c>`,
      "",
      "2026-07-03T08:22:30.000Z",
    ],
    [
      "text",
      `<c t="inlineStr"><is><r><t>2026-07-03</t></r><r><t>T09:22:30Z</t></r></is></c>`,
      "",
      "2026-07-03T09:22:30.000Z",
    ],
    ["a shared text", `<c t="s"><v>1</v></c>`, "", "2026-07-03T09:22:30.000Z"],
  ])("%s is a moment", async (_, cell, workbookPr, utc) => {
    const strings =
      "<si><t>x</t></si><si><r><t>2026-07-03T09:22</t></r><r><t>:30Z</t></r><rPh><t>reading</t></rPh></si>";
    const rows = await rowsIn(
      "book.xlsx",
      workbookOf("irrigation", header + delivery(cell), { workbookPr, strings, styles }),
    );
    expect(rows).toMatchObject([{ verdict: "good", line: 7, values: { started_at: utc } }]);
  });

  it.each([
    ["3", `<c><v>3</v></c>`],
    ["3 % by a built-in format", `<c s="3"><v>0.03</v></c>`],
    ["3 % by an own format", `<c s="4"><v>0.03</v></c>`],
    ["3 with a unit in its format", `<c s="5"><v>3</v></c>`],
    ["a formula's result", `<c><f>1+2</f><v>3</v></c>`],
  ])("%s is 3 of a percentage's column", async (_, cell) => {
    const rows = await rowsIn(
      "book.xlsx",
      workbookOf("irrigation", header + delivery("<c/>", cell), { styles }),
    );
    expect(rows).toMatchObject([{ verdict: "good", values: { concentration_pct: 3 } }]);
  });

  it.each([
    [
      "a number that is no date",
      `<c><v>46206.39</v></c>`,
      /started_at: found "46206\.39"; write date and time/,
    ],
    ["a failed formula", `<c t="e"><v>#REF!</v></c>`, /started_at: found "#REF!"/],
  ])("%s is held", async (_, cell, sentence) => {
    const rows = await rowsIn(
      "book.xlsx",
      workbookOf("irrigation", header + delivery(cell), { styles }),
    );
    expect(outcome(rows[0])).toMatch(sentence);
    expect(outcome(rows[0])).toMatch(/^book\.xlsx, sheet irrigation, line 7/);
  });

  it("dates that a writer of workbooks made are read", async () => {
    const columns = Object.keys(right.followups);
    const day = { value: new Date("2026-08-14T00:00:00Z"), type: Date, format: "dd/mm/yyyy" };
    const book = await writeWorkbook([
      columns,
      columns.map((name) => (name === "day" ? day : right.followups[name as "day"])),
    ]).toBuffer();
    expect(await rowsIn("followups.xlsx", book)).toMatchObject([
      { verdict: "good", values: { day: "2026-08-14" } },
    ]);
  });

  it("a value beyond the header holds its row and no other", async () => {
    const extra = inlineRow(["V-1", "MB1", "1", "naocl", "syringe", "", "", "beside"]);
    const rows = await rowsIn("book.xlsx", workbookOf("irrigation", header + extra + delivery("")));
    expect(rows.map((row) => row.verdict)).toEqual(["held", "good"]);
    expect(outcome(rows[0])).toMatch(
      /found a value in column H; the header row has no name over it/,
    );
  });
});

describe("a workbook that is none", () => {
  it.each([
    ["text", "no workbook"],
    ["nothing", ""],
    ["another ZIP file", writeZip({ "a.txt": "a" })],
    ["half of one", workbookOf("canals", header).subarray(0, 300)],
    ["XML that breaks off", workbookOf("irrigation", `${header}<row><c>`.concat("<"))],
    ["far more than it seems", workbookOf("irrigation", header + " ".repeat(150_000_000))],
  ])("%s is refused in one sentence", async (_, content) => {
    const refusal = await readAll("book.xlsx", content).catch((trouble: unknown) => trouble);
    expect(refusal).toMatchObject({
      name: "UnreadableFile",
      message: expect.stringMatching(/^book\.xlsx: it cannot be read as a workbook/),
    });
  });

  it("without a table in it is refused for what its first sheet holds", async () => {
    const book = workbookOf("Notes", inlineRow(["session_id", "shade"]));
    await expect(readAll("book.xlsx", book)).rejects.toThrow(
      /sheet Notes: neither its name nor its header row \(session_id, shade\)/,
    );
  });

  it("of empty sheets is empty", async () => {
    await expect(readAll("book.xlsx", workbookOf("canals", ""))).rejects.toThrow(/it is empty/);
  });
});
