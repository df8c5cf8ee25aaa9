import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { signInTo } from "./sign-in";
import { firstNumber, tableRows, wordsOf } from "./table-rows";

// Figures are computed by the page's own table and compared with what the page says; no figure is written here.

test("The clinician reads the own strips, follows a unit that missed to its visit, and keeps a note", async ({
  page,
}) => {
  await signInTo(page, "/clinician", "clinician M-03");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("My quarter");

  const volume = page.locator("article.strip#volume");
  await expect(volume.locator(".estimate")).toHaveText(/\d mL/);
  await expect(volume).toContainText(/Half of your .* had .* or more/);
  // Four other clinicians with ten canals each stand behind it in the demo (seed/cast.ts).
  await expect(volume).toContainText(/The practice's median without you is [\d.]+\smL/);
  const estimate = await wordsOf(volume.locator(".estimate"));
  await expect(volume.locator(".finding")).toContainText(estimate);

  // Every unit of a strip stands in one of its chart's columns, those under "More measures" too.
  for (const strip of await page
    .locator("article.strip", { has: page.locator("details table") })
    .all()) {
    const rows = await tableRows(strip.locator("details table"));
    const heads = Object.keys(rows[0] ?? {});
    if (heads[0] !== "From") continue;
    const units = rows.reduce((sum, row) => sum + firstNumber(row[heads[2] ?? ""]), 0);
    expect(units).toBe(firstNumber((await strip.locator(".counts").textContent()) ?? ""));
  }

  const missed = page.locator("article.strip", {
    has: page.getByText("What to do about those that missed it"),
  });
  await expect(missed.first()).toBeVisible();
  const title = await wordsOf(missed.first().getByRole("heading", { level: 3 }));
  const [row] = await tableRows(missed.first().locator("table"));
  await missed.first().locator("tbody a").first().click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Visit /);
  await expect(page.locator("#facts dl")).toContainText("M-03");
  await expect(page.locator("#criteria")).toContainText(title);
  await expect(page.locator("#criteria")).toContainText(row?.State ?? "");
});

test("The clinician's note is kept for its writer, and taken away again", async ({
  page,
  browser,
}) => {
  await signInTo(page, "/clinician?period=2025-Q4", "clinician M-06");
  const text = "Ask for the pump of the second chair to be looked at.";
  const note = page.getByLabel("Your note on October to December 2025");
  await note.fill(text);
  await page.getByRole("button", { name: "Keep the note" }).click();
  await expect(page.getByText("The note is kept.")).toBeVisible();
  await page.reload();
  await expect(note).toHaveValue(text);
  await page.goto("/clinician?period=2025-Q3");
  await expect(page.getByLabel("Your note on July to September 2025")).toHaveValue("");

  const others = await browser.newContext({ storageState: stateOf("group lead") });
  for (const address of ["/lead?period=2025-Q4", "/clinician?period=2025-Q4"]) {
    expect(await (await others.request.get(address)).text()).not.toContain(text);
  }
  await others.close();

  await page.goto("/clinician?period=2025-Q4");
  await note.fill("");
  await page.getByRole("button", { name: "Keep the note" }).click();
  await expect(page.getByText("The note is taken away.")).toBeVisible();
});
