import { writeFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { dropFile } from "./drop-file";
import { stateOf } from "./everybody";
import { firstNumber, tableRows } from "./table-rows";

// Counts are worked by hand from the small file dropped: three visits of a chair of the demo, two with a tooth that is none and one
// without a clinician.
const columns =
  "practice,session_id,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome";
const visit = (id: string, clinician: string, tooth: string) =>
  `QUINCE,${id},QUINCE-1,${clinician},bench-patient-${id},2024-08-05T09:00:00Z,${tooth},fdi,primary,completed`;
const file = [
  columns,
  visit("B-1", "Q-11", "49"),
  visit("B-2", "Q-11", "49"),
  visit("B-3", "", "36"),
  "",
];

test("Held rows are mended alike and one by one, with a preview, a trail and a way back", async ({
  browser,
}, info) => {
  const context = await browser.newContext({ storageState: stateOf("record keeper") });
  const page = await context.newPage();
  await page.goto("/records");
  const path = info.outputPath("sessions.csv");
  await writeFile(path, file.join("\r\n"));
  await dropFile(page, page.locator("form .empty"), path);
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page).toHaveURL(/\/records\/imports\/\d+$/);
  await expect(page.getByRole("heading", { name: "Held rows" })).toBeVisible({ timeout: 20_000 });
  const importPage = page.url();
  expect(await counts(page)).toEqual({ Accepted: 0, Held: 3 });

  await page.getByRole("link", { name: "Mend these rows, or let them go" }).click();
  await page.locator("#reasons").getByRole("link", { name: /“49”/ }).click();
  await page.getByLabel("Where tooth has “49”, it becomes").fill("48");
  await page.getByRole("button", { name: "Show what it would do to 2 rows" }).click();
  await expect(page.locator(".finding")).toHaveText("2 rows: 2 would be accepted, 0 still held.");
  expect(await tableRows(page.locator("#examples table"))).toHaveLength(2);
  await page.goto(importPage);
  expect(await counts(page)).toEqual({ Accepted: 0, Held: 3 });
  await page.goBack();
  await page.getByRole("button", { name: "Mend the rows" }).click();
  await expect(page).toHaveURL(/\/records\/held\/mends#act-\d+$/);
  const act = page.locator("#acts tbody tr").first();
  await expect(act).toContainText("sessions, tooth: “49” becomes “48”");
  await expect(act).toContainText("2 of 2 accepted at once; 0 held now");
  await expect(act).toContainText("by Perrin Oxlade");
  await page.goto(importPage);
  expect(await counts(page)).toEqual({ Accepted: 2, Held: 1 });

  await page.locator("#held").getByRole("link", { name: "Mend sessions B-3" }).click();
  await expect(page.getByLabel("clinician (required)")).toHaveValue("");
  await page.getByRole("button", { name: "Check and keep" }).click();
  await expect(page.locator("main .form-error")).toContainText("Nothing is changed yet.");
  await page.getByLabel("clinician (required)").fill("Q-11");
  await page.getByRole("button", { name: "Check and keep" }).click();
  await expect(page.locator("main")).toContainText("It was mended and is accepted.");
  expect(await page.content()).not.toContain("bench-patient");
  await page.goto(importPage);
  expect(await counts(page)).toEqual({ Accepted: 3, Held: 0 });

  for (const held of [1, 3]) {
    await page.goto("/records/held/mends");
    const standing = page.locator("#acts tbody tr", { has: page.getByRole("button") }).first();
    const id = await standing.getAttribute("id");
    await standing.getByRole("button", { name: "Take back" }).click();
    const taken = page.locator(`#${id}`);
    await expect(taken).toContainText(/Taken back .+ by Perrin Oxlade/);
    await page.goto(importPage);
    expect(await counts(page)).toEqual({ Accepted: 3 - held, Held: held });
  }
  await page.getByRole("checkbox", { name: /I want to take import/ }).check();
  await page.getByRole("button", { name: "Undo this import" }).click();
  await expect(page.locator("main > .finding")).toContainText(/undone/i);
  await context.close();
});

async function counts(page: Page) {
  const [row] = await tableRows(page.locator("#files table"));
  return { Accepted: firstNumber(row?.Accepted), Held: firstNumber(row?.Held) };
}
