import { readFile, writeFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { tables } from "@/lib/records/tables";
import { dropFile } from "./drop-file";
import { stateOf } from "./everybody";
import { messyVisits, patientReference } from "./messy-visits";
import { signInTo } from "./sign-in";
import { firstNumber, tableRows, wordsOf } from "./table-rows";

// Counts are worked by hand from the small file dropped.

test("The record keeper drops a messy file, lets a held row go, and undoes the import", async ({
  page,
}, info) => {
  await signInTo(page, "/records", "record keeper");
  const file = info.outputPath(messyVisits.name);
  await writeFile(file, messyVisits.text);
  await dropFile(page, page.locator("form .empty"), file);
  await expect(page.getByRole("list", { name: "Files to bring in" })).toHaveText(messyVisits.name);
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page).toHaveURL(/\/records\/imports\/\d+$/);
  const importPage = page.url();

  await expect(page.getByRole("heading", { name: "Held rows" })).toBeVisible({ timeout: 20_000 });
  expect(await fileCounts(page)).toEqual(messyVisits.counts);
  const { Read, ...others } = await fileCounts(page);
  expect(Object.values(others).reduce((sum, rows) => sum + rows)).toBe(Read);
  await expect(page.locator("#files")).toContainText(messyVisits.notKept);
  const held = await tableRows(page.locator("#held table"));
  for (const [line, column] of Object.entries(messyVisits.wrong)) {
    const row = held.find((one) =>
      one["File and line"]?.includes(`${messyVisits.name}, line ${line} `),
    );
    expect(row?.["What was found, and what would be right"], `line ${line}`).toMatch(
      new RegExp(`${column}: .+\\. .+\\.`),
    );
  }
  expect(await page.content()).not.toContain(patientReference);

  await page.getByRole("link", { name: "Mend these rows, or let them go" }).click();
  await page.getByRole("checkbox", { name: /line 5/ }).check();
  await page.getByLabel("Reason, kept under your name").fill("The chair was booked by mistake.");
  await page.getByRole("button", { name: "Let the chosen rows go" }).click();
  await expect(page.getByRole("status").filter({ hasText: "1 row let go" })).toBeVisible();
  await page.goto("/records/held?state=let-go");
  await expect(page.locator("#rows")).toContainText(
    "Let go by Perrin Oxlade: The chair was booked by mistake.",
  );
  await page.goto(importPage);
  expect(await fileCounts(page)).toEqual({ ...messyVisits.counts, Held: 2, "Let go": 1 });

  const visitsBefore = await chairVisits(page);
  await page.goto(importPage);
  await page.getByRole("checkbox", { name: /I want to take import/ }).check();
  await page.getByRole("button", { name: "Undo this import" }).click();
  await expect(page.locator("main > .finding")).toContainText(/undone/i);
  expect(await chairVisits(page)).toBe(visitsBefore - 2);
});

test("Files that hold no records are refused in words, and nothing begins", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("record keeper") });
  const page = await context.newPage();
  await page.goto("/records");
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page.locator("form .form-error")).toHaveText("Choose at least one file.");
  await page
    .locator("#files")
    .setInputFiles({ name: "notes.pdf", mimeType: "application/pdf", buffer: Buffer.from("%PDF") });
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page.locator("form .form-error")).toContainText("notes.pdf is no record file");
  await expect(page).toHaveURL(/\/records$/);
  await context.close();
});

test("A blank template has the columns that the format lists", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("record keeper") });
  const page = await context.newPage();
  await page.goto("/records/format");
  for (const table of ["sessions", "irrigation"] as const) {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator(`#${table} a[href$="${table}.csv"]`).first().click(),
    ]);
    const [header] = (await readFile(await download.path(), "utf8"))
      .replace("\ufeff", "")
      .split("\r\n");
    expect(header?.split(",")).toEqual(tables[table].columns.map((column) => column.name));
    const described = await tableRows(page.locator(`#${table} table`));
    expect(described.map((row) => Object.values(row)[0])).toEqual(header?.split(","));
  }
  await context.close();
});

/** The counts of the import's one file. */
async function fileCounts(page: Page) {
  const [row] = await tableRows(page.locator("#files table"));
  const counts = Object.keys(messyVisits.counts).map((name) => [name, firstNumber(row?.[name])]);
  return Object.fromEntries(counts) as typeof messyVisits.counts;
}

/** Visits of the chair in the quarter of the messy file, as the coverage tells them. */
async function chairVisits(page: Page): Promise<number> {
  await page.goto("/records/coverage?period=2024-Q4&practice=QUINCE");
  const chair = page.locator("#coverage .calendar-box", { hasText: "QUINCE-1" });
  return firstNumber(await wordsOf(chair.locator("p")));
}
