import { expect, type Locator, type Page, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { wordsOf } from "./table-rows";

// Expected values follow from what is chosen in the editor, and from the project's own rules of dates.

test.describe.configure({ mode: "serial", timeout: 120_000 });

const title = "Upper molars: 15 mL or more";

test("A lead adds a criterion by the editor alone, sees what it would have done, and puts it in force", async ({
  browser,
}) => {
  const page = await openAs(browser, "/protocol?practice=MEDLAR");
  await page.getByRole("link", { name: "Add a criterion" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("A criterion of your own");

  const which = page.getByRole("group", { name: "Only those of which", exact: true });
  await addRow(which, { field: "the group of teeth", value: "molar" });
  await addRow(which, { field: "the jaw", value: "upper" });

  const met = page.getByRole("group", { name: "Met if", exact: true });
  await met.getByRole("button", { name: "Add a sentence about several to Met if" }).click();
  await met.getByLabel("What the sentence says").selectOption({ label: "the total of … is …" });
  await addRow(met.getByRole("group", { name: "Which delivery" }), {
    ...{ field: "the irrigant", value: "hypochlorite" },
  });
  await met.getByLabel("Limit of the total").fill("15");
  await page.getByLabel("the patient could not tolerate it").check();

  const readsAs = page.locator("#reads-as");
  await expect(readsAs).toContainText(
    "Canals where the group of teeth is molar and the jaw is upper.",
  );
  await expect(readsAs).toContainText(
    "Met if the volume of all deliveries of hypochlorite at the visit together is 15 mL or more. Excepted for: the patient could not tolerate it.",
  );
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(readsAs).toContainText("Excepted for any coded reason.");
  await page.getByRole("button", { name: "Redo" }).click();
  await expect(readsAs).toContainText("Excepted for: the patient could not tolerate it.");

  const reading = page.getByRole("complementary", { name: /How it reads/ });
  await expect(reading).toContainText(/it would have applied to \d+ canals and been met in/);
  const counted = await wordsOf(reading.locator(".note-look"));

  // Without its words it is not put in force, and the editor leads to what is missing.
  await page.getByLabel("Reason", { exact: true }).fill("Agreed at the meeting.");
  await page.getByRole("button", { name: "Put in force" }).click();
  const missing = page.getByRole("status").filter({ hasText: "Not in force yet" });
  await missing.getByRole("button", { name: "Title" }).click();
  await expect(page.getByLabel("Title")).toBeFocused();
  await page.getByLabel("Title").fill(title);
  await page
    .getByLabel("What is demanded")
    .fill("In upper molars the canal was irrigated with 15 mL of hypochlorite or more.");
  await page.getByLabel("Why", { exact: true }).fill("Upper molars have more to rinse.");
  await page.getByLabel("Where it comes from").fill("Common practice.");
  await expect(missing).toHaveCount(0);

  const from = dayWithin(counted);
  await page.getByLabel("From", { exact: true }).fill(from);
  await page.getByRole("button", { name: "Put in force" }).click();
  await expect(page).toHaveURL(/\/protocol\/own-upper-molars-15-ml-or-more\?practice=MEDLAR$/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
  await expect(page.locator(".finding")).toHaveText(/^In force since 15 /);
  await expect(page.locator("#versions")).toContainText("Agreed at the meeting.");

  await page.goto("/protocol?practice=MEDLAR");
  await expect(page.locator("#own")).toContainText(title);
  await page.goto("/protocol?practice=QUINCE");
  await expect(page.locator("#own")).not.toContainText(title);
});

test("Changing it shows what is in force beside it; every example opens to its explanation", async ({
  browser,
}) => {
  const page = await openAs(browser, "/protocol?practice=MEDLAR");
  await page.getByRole("link", { name: title }).click();
  await page.getByRole("link", { name: "Change", exact: true }).click();
  const reading = page.getByRole("complementary", { name: /How it reads/ });
  const row = reading.getByRole("row", { name: /^Met/ });
  await expect(row).toBeVisible();
  const [edited, inForce] = await row.getByRole("cell").allInnerTexts();
  expect(edited).toBe(inForce);
  await page.getByLabel("Limit of the total").fill("1");
  await expect(row.getByRole("cell").first()).not.toHaveText(edited ?? "");
  await expect(row.getByRole("cell").last()).toHaveText(inForce ?? "");
  const links = await reading
    .locator("ul a")
    .evaluateAll((all) => all.map((one) => one.getAttribute("href") ?? ""));
  expect(links.length).toBeGreaterThan(1);
  for (const link of links) {
    expect((await page.goto(link))?.status()).toBe(200);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  }
});

test("It is taken out of force from today on, and works without a mouse and on a phone", async ({
  browser,
}) => {
  const page = await openAs(browser, "/protocol?practice=MEDLAR");
  await page.setViewportSize({ width: 360, height: 800 });
  await page.getByRole("link", { name: title }).focus();
  await page.keyboard.press("Enter");
  const end = page.getByRole("form", { name: "Take out of force" });
  await end.getByLabel("Reason").fill("A trial.");
  await page.keyboard.press("Enter");
  await expect(page.locator(".finding")).toHaveText(/^Out of force since .*: A trial\.$/);

  await page.goto("/protocol/isolation/change?practice=MEDLAR");
  const met = page.getByRole("group", { name: "Met if", exact: true });
  await met.getByRole("button", { name: /^Add a row/ }).focus();
  await page.keyboard.press("Enter");
  const added = met.getByLabel("What is looked at").last();
  await expect(added).toBeFocused();
  await met.getByRole("button", { name: /^Up/ }).last().focus();
  await page.keyboard.press("Enter");
  await expect(met.getByRole("button", { name: /^Down/ }).first()).toBeFocused();
  await met
    .getByRole("button", { name: /^Remove/ })
    .first()
    .focus();
  await page.keyboard.press("Enter");
  await expect(met.getByRole("button", { name: /^Add a row/ })).toBeFocused();
  await expect(met.getByLabel("What is looked at")).toHaveCount(1);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(360);
});

async function openAs(
  browser: { newContext(options: object): Promise<{ newPage(): Promise<Page> }> },
  address: string,
): Promise<Page> {
  const context = await browser.newContext({ storageState: stateOf("group lead") });
  const page = await context.newPage();
  await page.goto(address);
  return page;
}

/** Adds a row to a group: what is looked at is the value. */
async function addRow(group: Locator, row: { field: string; value: string }): Promise<void> {
  await group.getByRole("button", { name: /^Add a row/ }).click();
  await group.getByLabel("What is looked at").last().selectOption({ label: row.field });
  await group.getByLabel("Value").last().selectOption({ label: row.value });
}

/** The middle of the first month of the quarter that was counted: "October to December 2026: …". */
function dayWithin(counted: string): string {
  const [, month, year] = /^(\w+) to \w+ (\d{4})/.exec(counted) ?? [];
  const date = new Date(`15 ${month} ${year} UTC`);
  return date.toISOString().slice(0, 10);
}
