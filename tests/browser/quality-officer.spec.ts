import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { stateOf } from "./everybody";
import { signInTo } from "./sign-in";
import { firstNumber, tableRows } from "./table-rows";

// Figures are computed by the exported file and compared with the page; no figure is written here.

type Row = Record<string, string>;

/** What stands in a cell that rests on few people. */
const masked = "masked";

test("The quality officer previews the report, exports it, and finds it among the exports", async ({
  page,
}) => {
  await signInTo(page, "/quality?period=2026-Q2", "quality officer");
  await expect(page.locator("main .finding").first()).toBeVisible();
  await page.getByRole("link", { name: "Preview the report" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Adherence report");

  const preview = await readPreview(page);
  const { name, bytes } = await exportFile(page);
  expect(name).toBe("adherence-2026-Q2.csv");
  compare(preview, rowsOf(bytes));

  await page.goto("/quality?period=2026-Q2");
  const before = await tableRows(page.locator("#exports table"));
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const line = before.find((one) => one["SHA-256 of the file"] === sha256);
  expect(line, "the export's own line").toBeDefined();
  expect(line?.Practices).toBe("the whole group");
  expect(line?.Period).toContain("2026");
});

test("The report of one practice is that practice's, on the page and in the file", async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: stateOf("quality officer") });
  const page = await context.newPage();
  await page.goto("/quality/report?period=2026-Q1");
  await page.locator("#picker-practice").selectOption("QUINCE");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/practice=QUINCE/);
  const preview = await readPreview(page);
  const { name, bytes } = await exportFile(page);
  expect(name).toBe("adherence-2026-Q1-QUINCE.csv");
  const rows = rowsOf(bytes);
  compare(preview, rows);
  expect(new Set(rows.filter((row) => row.row === "figure").map((row) => row.practice))).toEqual(
    new Set(["QUINCE"]),
  );
  await context.close();
});

interface Preview {
  /** By criterion. */
  figures: Map<string, Row[]>;
  people: Row[];
  cautions: string[];
}

async function readPreview(page: Page): Promise<Preview> {
  const figures = new Map<string, Row[]>();
  for (const section of await page.locator("main section.section:has(table.reported)").all()) {
    figures.set(
      (await section.getAttribute("id")) ?? "",
      await tableRows(section.locator("table.reported")),
    );
  }
  return {
    figures,
    people: await tableRows(page.locator("#about table")),
    cautions: await page.locator(".cautions li").allInnerTexts(),
  };
}

async function exportFile(page: Page): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Export as CSV" }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

/** The file's rows; it is UTF-8 with a byte order mark, CRLF between records, and no field is a formula. */
function rowsOf(bytes: Buffer): Row[] {
  expect([...bytes.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  const rows = parse(bytes, { bom: true, columns: true, record_delimiter: "\r\n" }) as Row[];
  const formulas = rows
    .flatMap((row) => Object.values(row))
    .filter((field) => /^[=+@\t]|^-(?!\d)/.test(field));
  expect(formulas).toEqual([]);
  return rows;
}

function compare(preview: Preview, rows: Row[]): void {
  const inFile = rows.filter((row) => row.row === "figure");
  expect([...preview.figures.keys()]).toEqual([...new Set(inFile.map((row) => row.criterion))]);
  for (const [criterion, lines] of preview.figures) {
    const same = inFile.filter((row) => row.criterion === criterion);
    expect(lines.map((line) => onPage(line))).toEqual(same.map((row) => inRow(row)));
    for (const [place, line] of lines.entries()) {
      const row = same[place];
      if (row?.about === "practice") expect(line.Where).toContain(row.practice);
      if (row?.about === "chair") expect(line.Where).toContain(row.chair);
      if (row?.rate && row.rate !== masked)
        expect(line["Rate and interval"]).toMatch(startsWithPercent(Number(row.rate)));
    }
  }
  const people = rows.filter((row) => row.row === "people");
  for (const [unit, column] of [
    ["patient", "Patients"],
    ["clinician", "Clinicians"],
  ] as const) {
    const same = people.filter((row) => row.unit === unit);
    expect(same).toHaveLength(preview.people.length);
    for (const [place, row] of same.entries()) {
      const words = preview.people[place]?.[column];
      if (row.population !== masked) expect(firstNumber(words)).toBe(Number(row.population));
      else
        expect([row.says, words]).toEqual([
          expect.stringMatching(/^masked: fewer than 5/),
          expect.stringMatching(/fewer than 5/),
        ]);
    }
  }
  expect(rows.filter((row) => row.row === "caution").map((row) => row.says)).toEqual(
    preview.cautions,
  );
}

function onPage(line: Row) {
  const counts = ["In all", "Eligible", "Met", "Not met", "Not recorded"].map((head) =>
    line[head] === masked ? masked : firstNumber(line[head]),
  );
  return [...counts, line["In these records"], line["Beyond chance"]];
}

function inRow(row: Row) {
  const counts = [row.population, row.eligible, row.met, row.not_met, row.not_recorded].map(
    (count) => (count === masked ? masked : Number(count)),
  );
  return [...counts, row.in_these_records, row.beyond_chance];
}

/** The page gives a rate with one decimal or none. */
function startsWithPercent(rate: number): RegExp {
  const percent = rate * 100;
  return new RegExp(`^(${percent.toFixed(2)}|${percent.toFixed(1)}|${Math.round(percent)}) ?%`);
}
