import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { tableRows } from "./table-rows";

// The values are the project's own: two canals of the demo that a system sent again with another working length.

test("The record keeper compares two versions, takes the newer one and takes it back", async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: stateOf("record keeper") });
  const page = await context.newPage();
  await page.goto("/records");
  await page.getByRole("link", { name: /newer versions? of accepted rows/ }).click();
  await expect(page.getByRole("heading", { name: "Corrections", level: 1 })).toBeVisible();
  const waiting = page.locator("#waiting table");
  const before = await tableRows(waiting);
  const [first] = before;
  expect(first?.Row).toMatch(/^canals Q/);
  expect(first?.["What differs: accepted → newer"]).toMatch(/working length: .+ mm/);

  await page.getByRole("button", { name: "Do it for the chosen rows" }).click();
  await expect(page.locator(".field-error")).toHaveText("Choose which version is to stand.");
  await waiting.getByRole("checkbox").first().check();
  await page.getByLabel("Which version is to stand").selectOption("newer");
  await page.getByRole("button", { name: "Do it for the chosen rows" }).click();
  await expect(page.getByRole("status").filter({ hasText: "1 newer version taken" })).toBeVisible();
  await expect(waiting.locator("tbody tr")).toHaveCount(before.length - 1);

  const made = page.locator("#made table");
  const [correction] = await tableRows(made);
  expect(correction?.Row).toBe(first?.Row);
  expect(correction?.Taken).toContain("by Perrin Oxlade");
  await made.getByRole("button", { name: "Take back" }).first().click();
  await expect(made.getByText(/Taken back .+ by Perrin Oxlade/).first()).toBeVisible();
  await expect(waiting.locator("tbody tr")).toHaveCount(before.length);
  await context.close();
});

test("Coverage says in words what each day has and what is missing", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("record keeper") });
  const page = await context.newPage();
  await page.goto("/records/coverage?period=2026-Q2&practice=MEDLAR");
  await expect(page.locator("#coverage .calendar-box")).toHaveCount(4);
  const marked = page.locator("#coverage td.day-look");
  await expect(page.locator("#missing li")).toHaveCount(await marked.count());
  await expect(marked.first()).toContainText(/usually there|weeks before/);
  await context.close();
});
