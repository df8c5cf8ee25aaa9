import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { signInTo } from "./sign-in";
import { firstNumber, tableRows } from "./table-rows";

// Counts are computed by a plain reading of the same file in tests/intake/mapping.

const file = join(import.meta.dirname, "../data/foreign/chart-export.csv");

test("A file of another system waits, its mapping is made and tested on the whole file, and it is deleted", async ({
  page,
}) => {
  await signInTo(page, "/records", "record keeper");
  await page.locator("#files").setInputFiles(file);
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page).toHaveURL(/\/records\/waiting$/);
  await page
    .getByRole("link", { name: /chart-export\.csv/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "chart-export.csv" })).toBeVisible();
  await expect(page.locator("main")).toContainText("Tabs, UTF-16, column names in line 1");
  await expect(page.locator("main")).not.toContainText(/pt-[0-9a-f]{10}/);

  expect(await stepsOfWhole(page)).toEqual({ right: 102, held: 10 });
  const words = page.getByRole("table").filter({ hasText: "Word in the file" });
  const steps = words.filter({ hasText: "n/p" });
  await steps.getByLabel("“empty cell” means").selectOption({ label: "not done" });
  await steps.getByLabel("“n/p” means").selectOption({ label: "excepted" });
  await steps.getByLabel("Another field that “n/p” fills").selectOption({ label: "Reason" });
  await steps.getByLabel("Reason", { exact: true }).fill("not-possible");
  await expect(page.getByText("The mapping was changed since")).toBeVisible();
  expect(await stepsOfWhole(page)).toEqual({ right: 112, held: 0 });
  await expect(
    page.getByRole("button", { name: "Keep the mapping and bring the file in" }),
  ).toBeVisible();

  await page.goto("/records/waiting");
  await page.getByRole("form", { name: "Delete chart-export.csv" }).getByRole("button").click();
  await expect(page.locator("main")).toContainText("No file waits.");
});

test("The page of mappings leads to their published schema", async ({ page }) => {
  await signInTo(page, "/records/mappings", "record keeper");
  await expect(page.getByRole("heading", { name: "Mappings", level: 1 })).toBeVisible();
  const schema = await page.request.get("/api/records/mapping-schema");
  expect(schema.status()).toBe(200);
  expect(Object.keys(await schema.json())).toContain("$schema");
});

/** How many rows feed the table of steps, of the whole file. */
async function stepsOfWhole(page: Page): Promise<{ right: number; held: number }> {
  await page.getByRole("button", { name: "Test on the whole file" }).click();
  await expect(page.getByText("The mapping was changed since")).toHaveCount(0, { timeout: 20_000 });
  const table = page.getByLabel("Rows of the whole file by table").locator("table");
  await expect(table).toBeVisible({ timeout: 20_000 });
  const row = (await tableRows(table)).find((one) => one.Table === "Steps of the protocol");
  return {
    right: firstNumber(row?.["Right by themselves"]),
    held: firstNumber(row?.["Would be held"]),
  };
}
