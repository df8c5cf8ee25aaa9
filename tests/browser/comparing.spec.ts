import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { chartTable, tableRows, wordsOf } from "./table-rows";

// Expected values are the project's own rules of what a comparison says beside itself.

const separations = "/lead/measures/separation-per-canal?period=2026-Q3";

test("The lead reads a funnel point by point, with what the page promises and what could have been seen", async ({
  browser,
}) => {
  const page = await (await browser.newContext({ storageState: stateOf("group lead") })).newPage();
  await page.goto(separations);
  const chance = page.locator("#chance");
  await expect(chance).toContainText(/\d+ figures are compared on this page; by chance alone/);
  await expect(chance).toContainText("at most 5 pages in 100 show a look");
  const rows = await chartTable(chance);
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) {
    expect(row.Flag).toMatch(/^(Nothing to see|Look|Look first)$/);
    expect(row["What could have been seen"]).toMatch(/four times in five|would have shown no rate/);
    expect(row.Reliability).toMatch(/%$/);
  }
  await chance.getByRole("group", { name: /Arrow keys/ }).focus();
  await page.keyboard.press("Home");
  await expect(chance.locator(".point-read")).toContainText(rows[0]?.Clinician ?? "none");

  const mix = await tableRows(page.locator("#case-mix table").first());
  expect(mix.map((row) => row.Clinician)).toEqual(rows.map((row) => row.Clinician));
  const sum = (name: string) => mix.reduce((all, row) => all + Number(row[name]), 0);
  expect(sum("Observed")).toBeGreaterThan(0);
});

test("The lead chooses a clinician's line, sees the running sum, lets limits begin anew with a reason and takes it back", async ({
  browser,
}) => {
  const page = await (await browser.newContext({ storageState: stateOf("group lead") })).newPage();
  await page.goto(separations);
  const time = page.locator("#time");
  await expect(time).toContainText("Choose a clinician to see the running sum");
  await time.getByLabel("Whose line").selectOption("clinician:person:HG-11");
  await time.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/whose=clinician%3Aperson%3AHG-11/);
  await expect(time).toContainText(/Separations of clinician S-21/);
  await expect(time).toContainText(/a false alarm comes once in/);

  await time.getByText(/Let limits begin anew/).click();
  const form = time.getByRole("form", { name: "Let limits begin anew" });
  await form.getByLabel("From").selectOption("2026-01");
  await form.getByLabel("Reason").fill("Another lot of files");
  await form.getByRole("button", { name: "Begin anew" }).click();
  const kept = time.getByRole("listitem").filter({ hasText: "Jan 2026: Another lot of files" });
  await expect(kept).toBeVisible();
  await kept.getByRole("button", { name: "Take back" }).click();
  await expect(kept).toHaveCount(0);
});

test("Every clinician's own page says which interval to read and what a difference could be", async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: stateOf("clinician M-03") });
  const page = await context.newPage();
  await page.goto("/clinician?period=2026-Q3");
  const measures = page.locator("#measures");
  await expect(measures).toContainText(/the difference could be anything from .* to /);
  await expect(measures).toContainText(/Read .* which allows for canals of one patient/);
  await expect(page.locator("#summary")).toContainText("this page makes no adjustment");
  await expect(page.locator("#months")).toContainText("XmR chart");
});

test("The administrator changes the levels of flags with a reason, and the page's promise follows", async ({
  browser,
}) => {
  const page = await (
    await browser.newContext({ storageState: stateOf("administrator") })
  ).newPage();
  await page.goto("/administration/levels");
  const form = page.getByRole("form", { name: "Change the levels" });
  const put = async (look: string, first: string, reason: string) => {
    await form.getByLabel("Look, per cent").fill(look);
    await form.getByLabel("Look first, per cent").fill(first);
    await form.getByLabel("Reason").fill(reason);
    await form.getByRole("button", { name: "Put in force" }).click();
  };
  await put("50", "0.2", "Too much");
  await expect(form.locator(".field-error")).toHaveText(/between 0.1 and 20/);
  await put("10", "0.5", "A small group");
  await expect(page.locator("#in-force")).toContainText("A small group");
  const lead = await (await browser.newContext({ storageState: stateOf("group lead") })).newPage();
  await lead.goto("/lead?period=2026-Q3");
  expect(await wordsOf(lead.locator("#chance .note").last())).toContain("10 pages in 100");
  await put("5", "0.2", "As before");
  await expect(page.locator("#before")).toContainText("A small group");
});
