import { describe, expect, test } from "vitest";
import { type FileLayout, fileLayout } from "@/lib/intake/mapping/file-layout";
import { openFile } from "@/lib/intake/recognise/open-file";
import { recognise } from "@/lib/intake/recognise/recognise";
import { withFile } from "../with-file";
import { inlineRow, workbookOf, writeZip } from "../write-zip";

// Rows are worked by hand from the few lines of each file; the bytes of Windows-1252 are those of its published table.

const looked = (content: string | Uint8Array, name = "file.csv") =>
  withFile(content, (path) => recognise(path, name));

async function opened(content: string | Uint8Array, layout: Partial<FileLayout>) {
  return withFile(content, async (path) => {
    const sheet = await openFile(path, "file", fileLayout.parse({ kind: "separated", ...layout }));
    const rows = [];
    for await (const row of sheet?.rows ?? []) rows.push(row);
    return { header: sheet?.header, rows };
  });
}

describe("separated text", () => {
  test.each([
    ["utf-8", Buffer.from("\ufeffName;Größe\r\nZoë;5 €\r\n")],
    ["utf-16le", Buffer.from("\ufeffName;Größe\r\nZoë;5 €\r\n", "utf16le")],
    ["utf-16be", Buffer.from("Name;Größe\r\nZoë;5 €\r\n", "utf16le").swap16()],
    // 0x80 is the euro sign, 0xf6 ö, 0xdf ß, 0xeb ë.
    ["windows-1252", Buffer.from("Name;Gr\xf6\xdfe\r\nZo\xeb;5 \x80\r\n", "latin1")],
  ] as const)("is read in %s", async (encoding, bytes) => {
    const { header, rows } = await opened(bytes, { encoding, separator: ";" });
    expect(header).toEqual(["Name", "Größe"]);
    expect(rows).toEqual([{ line: 2, cells: { Name: "Zoë", Größe: "5 €" } }]);
  });

  test("keeps the numbers of lines below a title, over blank lines and cells of several lines", async () => {
    const text = "Report\n\nVisit|Note\rV-1|'two\nlines'\r\n\r\nV-2|it''s\n";
    const { rows } = await opened(text, { separator: "|", quote: "'", headerLine: 3 });
    expect(rows).toEqual([
      { line: 4, cells: { Visit: "V-1", Note: "two\nlines" } },
      { line: 7, cells: { Visit: "V-2", Note: "it''s" } },
    ]);
  });

  test("names columns as the file does: twice, empty, with blanks, or as every object has them", async () => {
    const { header, rows } = await opened(
      "Date,date, Working \t length,,__proto__,constructor\n1,2,3,4,5,6\n",
      {},
    );
    expect(header).toEqual([
      ...["Date", "date (2)", "Working length", "column 4", "column 5", "column 6"],
    ]);
    expect(Object.values(rows[0]?.cells ?? {})).toEqual(["1", "2", "3", "4", "5", "6"]);
  });
});

describe("a workbook", () => {
  const title = inlineRow(["Export of July", "North"]);
  const names = inlineRow(["Visit", "Datum", "Datum", "WL"]);

  test("is read below its title, with columns of one name apart", async () => {
    const data = title + names + inlineRow(["V-1", "1.7.", "2.7.", "21,5"]);
    const { layout, columns, readings, firstRows } = await looked(
      workbookOf("July", data),
      "a.xlsx",
    );
    expect(layout).toMatchObject({ kind: "workbook", sheet: "July", headerLine: 2, decimal: "," });
    expect(columns.map(({ name }) => name)).toEqual(["Visit", "Datum", "Datum (2)", "WL"]);
    expect(firstRows).toEqual([{ Visit: "V-1", Datum: "1.7.", "Datum (2)": "2.7.", WL: "21,5" }]);
    expect(readings.find(({ about }) => about === "headerLine")?.sure).toBe("likely");
  });

  test("merged cells have their value in the first, and a column without a name is one", async () => {
    const cell = (at: string, text: string) =>
      `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`;
    const data = `<row r="1">${cell("B1", "Visit")}${cell("D1", "Canal")}</row>
      <row r="2">${cell("B2", "V-1")}${cell("C2", "x")}${cell("D2", "MB")}</row>
      <row r="3">${cell("D3", "D")}</row>`;
    const { header, rows } = await opened(workbookOf("July", data), { kind: "workbook" });
    expect(header).toEqual(["Visit", "column 2", "Canal"]);
    expect(rows).toEqual([
      { line: 2, cells: { Visit: "V-1", "column 2": "x", Canal: "MB" } },
      { line: 3, cells: { Canal: "D" } },
    ]);
  });

  test("a formula is its kept value; without one, or failed, it is a trouble of its cell", async () => {
    const formulas = `<row>${["<f>1+2</f><v>3</v>", "<f>A1</f><v/>", "<f>1+2</f>"]
      .map((inner) => `<c>${inner}</c>`)
      .join("")}<c t="e"><f>1/0</f><v>#DIV/0!</v></c></row>`;
    const { rows } = await opened(workbookOf("July", inlineRow(["a", "b", "c", "d"]) + formulas), {
      kind: "workbook",
    });
    expect(rows[0]?.cells).toEqual({ a: "3", d: "#DIV/0!" });
    expect(rows[0]?.troubles).toEqual([
      expect.objectContaining({ column: "c", found: "a formula without its result" }),
      expect.objectContaining({ column: "d", found: "#DIV/0!" }),
    ]);
  });

  test("that is called .csv, and a packed file that is none, are told apart", async () => {
    await expect(looked(workbookOf("July", names))).rejects.toThrow(
      "file.csv: it is a workbook; give it a name that ends in .xlsx.",
    );
    await expect(looked(writeZip({ "a.csv": "a" }))).rejects.toThrow("it is a packed file");
  });
});

describe("JSON", () => {
  test("has the names of all its objects, however late they come, as the file writes them", async () => {
    const items = Array.from({ length: 150 }, (_, n) => ({ "Visit No": `V-${n}` }));
    const late = [...items, { "Visit No": "V-9", Größe: 25 }];
    for (const [text, name] of [
      [JSON.stringify(late), "a.json"],
      [late.map((item) => JSON.stringify(item)).join("\n"), "a.ndjson"],
    ] as const) {
      const { columns, rows } = await looked(text, name);
      expect(rows).toBe(151);
      expect(columns.map((one) => [one.name, one.cells - one.empty])).toEqual([
        ...[
          ["Visit No", 151],
          ["Größe", 1],
        ],
      ]);
    }
  });

  test("in UTF-16, or of one object alone, is refused in a sentence", async () => {
    await expect(looked(Buffer.from('[{"a":1}]', "utf16le"), "a.json")).rejects.toThrow(
      "it is JSON in UTF-16; JSON is written in UTF-8, so save it again.",
    );
    await expect(looked('{\n "rows": [\n  {"a": 1}\n ]\n}\n', "a.json")).rejects.toThrow(
      "it is one JSON object over many lines; write its rows as one array, or one object a line.",
    );
  });
});

describe("where the beginning misleads", () => {
  test("the separator is that of the whole file", async () => {
    // At first every cell has a decimal comma, so that commas and semicolons part each line alike.
    const many = "V-1;3,5\n".repeat(30_000) + "V-2;3;x\n".repeat(2) + "V-3;4\n".repeat(60_000);
    const { layout, ragged } = await looked(`Visit;mL,measured\n${many}`);
    expect([layout.separator, ragged]).toEqual([";", 2]);
  });

  test("a line in brackets is a title, not JSON", async () => {
    const { layout } = await looked("[Export]\nVisit;Canal\nV-1;MB\nV-2;D\n");
    expect(layout).toMatchObject({ kind: "separated", headerLine: 2 });
  });

  test("quotes that never close are letters", async () => {
    const { layout, ragged, rows } = await looked(`Visit;Size\n${'V-1;"5\n'.repeat(3)}V-2;6\n`);
    expect([layout.quote, rows, ragged]).toEqual(["", 4, 0]);
  });
});
