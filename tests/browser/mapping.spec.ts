import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { signInTo } from "./sign-in";

// Counts are computed by a plain reading of the same file in tests/intake/mapping.

const file = join(import.meta.dirname, "../data/foreign/chart-export.csv");

test("A file of another system waits, its mapping is made and tested on the whole file, and it is deleted", async ({
  page,
}) => {
  await signInTo(page, "/records", "record keeper");
  await page.locator("#files").setInputFiles(file);
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page).toHaveURL(/\/records\/waiting$/);
  await page.getByRole("link", { name: "chart-export.csv" }).click();
  await expect(page.getByRole("heading", { name: "chart-export.csv" })).toBeVisible();
  await expect(page.locator("#understood")).toContainText("Encoding: utf-16le (certain)");
  await expect(page.locator("main")).not.toContainText(/pt-[0-9a-f]{10}/);

  await testWhole(page);
  const steps = page.locator("#try .stack-tight").filter({ hasText: "steps" });
  await expect(steps).toContainText("102 are right by themselves and 10 would be held");

  const section = page.locator("section.section").filter({ hasText: "Table steps" });
  await section.getByLabel("an empty cell").last().selectOption("not-done");
  await section.getByLabel("“n/p”").selectOption("excepted");
  await section.getByLabel("for the reason (code)").fill("not-possible");
  await testWhole(page);
  await expect(steps).toContainText("112 are right by themselves and 0 would be held");
  await expect(
    page.getByRole("button", { name: "Keep the mapping and bring the file in" }),
  ).toBeVisible();

  await page.goto("/records/waiting");
  await page.getByRole("form", { name: "Delete chart-export.csv" }).getByRole("button").click();
  await expect(page.locator("main")).toContainText("No file waits.");
});

async function testWhole(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Save, and test the whole file" }).click();
  await expect(page.locator("#try")).toContainText("Of the whole file", { timeout: 20_000 });
}
