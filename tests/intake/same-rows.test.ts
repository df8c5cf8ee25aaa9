import { stringify } from "csv-stringify/sync";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { type ReadSheet, readAll } from "./read-text";

type Cell = string | number | boolean | null;
const columns = [
  "session_id",
  "canal",
  "seq",
  "practice",
  "started_at",
  "irrigant",
  "volume_ml",
  "delivery",
  "shade",
];
const irrigation: Cell[][] = [
  ["V-1", "MB1", 1, null, "2026-07-03T09:32:00+01:00", "naocl", 4.5, "syringe", "A2"],
  ["V-1", "mb2", 2, "NORTH", "2026-07-03T09:40:00", "edta", 0.1 + 0.2, "syringe", null],
  ["V-2", null, 1, null, null, "NaOCl", null, "continuous", true],
  ["V-3", "QQ", 1.5, null, "2026-10-25T01:30:00", "bleech", -3, "", null],
  ["V-4 <&>\"'", "main", 1, null, null, "other", "3,5", "syringe", null],
];
const canalColumns = ["session_id", "canal", "preparation", "filled", "working_length_mm"];
const canals: Cell[][] = [
  ["V-1", "MB1", "rotary", true, 20.5],
  ["V-1", "MB2", "hand", false, null],
  ["V-2", "P", "none", "perhaps", 41],
];

describe("the same rows are checked alike", () => {
  const tables = { irrigation: [columns, irrigation], canals: [canalColumns, canals] } as const;
  it.each(["irrigation", "canals"] as const)("%s in CSV, XLSX, JSON and NDJSON", async (name) => {
    const [header, rows] = tables[name];
    const objects = rows.map((row) =>
      Object.fromEntries(header.map((column, place) => [column, row[place] ?? null])),
    );
    const asText = rows.map((row) =>
      row.map((cell) =>
        cell === null ? "" : typeof cell === "boolean" ? (cell ? "yes" : "no") : String(cell),
      ),
    );
    const workbook = await writeWorkbook([[...header], ...rows.map((row) => [...row])]).toBuffer();
    const csv = only(await readAll(`${name}.csv`, stringify([header, ...asText])));
    const held = csv.filter((row) => (row as { verdict: string }).verdict === "held");
    expect(held).toHaveLength(name === "irrigation" ? 2 : 1);
    expect(only(await readAll(`${name}.xlsx`, workbook))).toEqual(csv);
    expect(only(await readAll(`${name}.json`, JSON.stringify(objects, null, 1)))).toEqual(csv);
    expect(
      only(await readAll(`${name}.ndjson`, objects.map((row) => JSON.stringify(row)).join("\n"))),
    ).toEqual(csv);
  });

  it("and a workbook holds a table a sheet, whatever notes stand beside", async () => {
    const workbook = await writeWorkbook([
      {
        sheet: "Notes",
        data: [
          ["Notes", "Notes"],
          ["by hand", "x"],
        ],
      },
      { sheet: "irrigation", data: [columns, ...irrigation] },
      { sheet: "Sheet 3", data: [canalColumns, ...canals] },
    ]).toBuffer();
    const sheets = await readAll("book.xlsx", workbook);
    expect(
      sheets.map(({ name, table, rows, ignored }) => [name, table, rows.length, ignored]),
    ).toEqual([
      ["book.xlsx, sheet irrigation", "irrigation", 5, ["shade"]],
      ["book.xlsx, sheet Sheet 3", "canals", 3, []],
    ]);
  });
});

it("a sheet that seems a table but is none that can be told is not passed over in silence", async () => {
  const workbook = await writeWorkbook([
    { sheet: "canals", data: [canalColumns, ...canals] },
    {
      sheet: "July",
      data: [
        ["session_id", "irrigant", "volume_ml"],
        ["V-1", "naocl", 3],
      ],
    },
  ]).toBuffer();
  await expect(readAll("book.xlsx", workbook)).rejects.toThrow(
    /^book\.xlsx, sheet July: neither its name/,
  );
});

/** The rows without what differs by its nature: the file's name, the line (of JSON the item) and the digits of 0.1 + 0.2. */
function only(sheets: ReadSheet[]): unknown[] {
  expect(sheets).toHaveLength(1);
  return (sheets[0]?.rows ?? []).map((row) =>
    JSON.parse(
      JSON.stringify({ ...row, line: 0 })
        .replaceAll(/[a-z]+\.(csv|xlsx|json|ndjson)(, sheet [^,]+)?, line \d+/gi, "file, line")
        .replaceAll("0.30000000000000004", "0.3"),
    ),
  );
}
