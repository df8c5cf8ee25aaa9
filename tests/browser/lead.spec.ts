import { expect, type Page, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { signInTo, typeIn } from "./sign-in";
import { chartTable, firstNumber, tableRows, wordsOf } from "./table-rows";

test("The clinical lead goes from the quarter to a measure, the records behind a point and a visit", async ({
  page,
}) => {
  await signInTo(page, "/lead", "group lead");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("This quarter");
  const chosen = await choosePeriodBefore(page);
  await expect(page.locator("main")).toContainText("Are the records fit to audit?");

  const family = page.locator("#across h3 a").first();
  const title = await wordsOf(family);
  const drawn = await chartTable(page.locator("#across"));
  await family.click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
  expect(new URL(page.url()).searchParams.get("period")).toBe(chosen);

  const across = page.locator("#across");
  const figures = await tableRows(across.locator("table").last());
  expect(figures.length).toBeGreaterThan(5);
  // The quarter's chart and the measure's own table say the same of everybody.
  expect(drawn.map(shared)).toEqual(figures.map(shared));

  // The pointer would read the point under it.
  await page.mouse.move(0, 0);
  await across.getByRole("group", { name: /Arrow keys/ }).focus();
  const point = across.locator(".point-read");
  for (const [key, row] of walk(figures)) {
    await page.keyboard.press(key);
    await expect(point).toContainText(row?.Estimate ?? "none");
    await expect(point).toContainText(codeOf(row));
  }
  const code = codeOf(figures[0]);
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/clinician=.*#records/);
  const records = await tableRows(page.locator("#records table"));
  expect(records.length).toBeGreaterThan(0);
  for (const record of records) expect(record["Clinician, chair"]).toContain(code);

  await page.locator("#records tbody a").first().click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Visit /);
  await expect(page.locator("#facts dl")).toContainText(code);
  await expect(page.locator("#sources")).toContainText(/\.csv, line \d/);
});

test("A cell of the criteria leads to that clinician's records that did not meet it", async ({
  browser,
}) => {
  const page = await (await browser.newContext({ storageState: stateOf("group lead") })).newPage();
  await page.goto("/lead");
  await choosePeriodBefore(page);
  const matrix = page.locator("#criteria table").first();
  const heads = await matrix.locator("thead th").allTextContents();
  const cell = matrix.locator('td:nth-child(n + 3) a[href*="outcome=not-met"]').first();
  const [place, title, counts] = await cell.evaluate((link) => {
    const cell = link.closest("td");
    return [
      cell?.cellIndex ?? 0,
      cell?.parentElement?.querySelector("th a")?.textContent ?? "",
      cell?.querySelector("div")?.textContent ?? "",
    ] as const;
  });
  const code = codeOf({ name: heads[place] ?? "" });
  await cell.click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
  const records = await tableRows(page.locator("#records table"));
  expect(records.length).toBeGreaterThan(0);
  expect(records.length).toBeLessThanOrEqual(notMetAtMost(counts));
  for (const record of records) expect(record["Clinician, chair"]).toContain(code);
});

test("The units of the clinicians and of the practices add up to the whole", async ({
  browser,
}) => {
  const page = await (await browser.newContext({ storageState: stateOf("group lead") })).newPage();
  await page.goto("/lead/measures/volume");
  await choosePeriodBefore(page);
  const clinicians = await tableRows(page.locator("#across table").last());
  const places = await tableRows(page.locator("#places table").last());
  const units = (rows: Record<string, string>[]) =>
    rows.reduce((sum, row) => sum + firstNumber(row.Counts), 0);
  const isPractice = (row: Record<string, string>) =>
    /^(practice )?(MEDLAR|QUINCE|SPINDLE)$/i.test(nameOf(row));
  const whole = firstNumber(
    (await wordsOf(page.locator("#what .counts").last())).replace(/^[^,]*,/, ""),
  );
  expect(units(clinicians)).toBe(whole);
  expect(places.filter(isPractice)).toHaveLength(3);
  expect(units(places.filter(isPractice))).toBe(whole);
});

test("A lead of one practice is shown that practice alone", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("MEDLAR lead") });
  const page = await context.newPage();
  for (const address of ["/lead", "/lead/measures/volume", "/lead/measures/criterion/isolation"]) {
    await page.goto(address);
    await expect(page.locator("#picker-period")).toBeVisible();
    await expect(page.locator("#picker-practice")).toHaveCount(0);
    expect(await page.content()).not.toMatch(/QUINCE|SPINDLE|\b[QS]-\d\d\b/);
  }
  await context.close();
});

test("Signing in by the form says what is wrong, leads on, and signing out ends it", async ({
  page,
}) => {
  await page.goto("/lead?period=2026-Q2&practice=MEDLAR");
  await typeIn(page, "nobody@tests.example", "not the password");
  await expect(page.getByRole("alert").filter({ hasText: "do not belong together" })).toBeVisible();
  await expect(page.getByLabel("Email")).toHaveValue("nobody@tests.example");
  await signInTo(page, "/lead?period=2026-Q2&practice=MEDLAR", "MEDLAR lead");
  await expect(page).toHaveURL(/\/lead\?period=2026-Q2&practice=MEDLAR$/);
  await page.getByRole("button", { name: "Sign out" }).click();
  await expect(page).toHaveURL(/\/sign-in/);
  await page.goto("/lead");
  await expect(page).toHaveURL(/\/sign-in\?to=\/lead/);
});

/** Chooses the period before the one that is shown, by the picker. @returns its name */
async function choosePeriodBefore(page: Page): Promise<string> {
  const picker = page.locator("#picker-period");
  const now = await picker.inputValue();
  const names = await picker
    .locator("option")
    .evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
  const quarters = names.filter((name) => /-Q\d$/.test(name)).sort();
  const before = quarters[quarters.indexOf(now) - 1];
  if (!before) throw new Error(`No quarter before ${now} can be chosen: ${names.join(", ")}`);
  await picker.selectOption(before);
  await page.locator("form.picker").getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(new RegExp(`period=${before}`));
  await expect(picker).toHaveValue(before);
  return before;
}

/** Keys along a chart's points, and the row that each leads to. */
function walk(rows: Record<string, string>[]) {
  return [
    ["Home", rows[0]],
    ["ArrowDown", rows[1]],
    ["End", rows.at(-1)],
    ["ArrowUp", rows.at(-2)],
    ["Home", rows[0]],
  ] as const;
}

/** What a chart's table and the table of figures both say. */
function shared(row: Record<string, string>) {
  return [nameOf(row), row.Estimate, row["95 % interval"], row.Counts, row["Not recorded"]];
}

/** So many units are not met at most where "50 of 52" are met. */
function notMetAtMost(counts: string): number {
  const [met, all] = counts.split("of").map(firstNumber);
  return (all ?? 0) - (met ?? 0);
}

function nameOf(row: Record<string, string>): string {
  return Object.values(row)[0] ?? "";
}

/** The code of the clinician of a row, as M-03. */
function codeOf(row: Record<string, string> | undefined): string {
  const code = /[A-Z]-\d\d/.exec(row ? nameOf(row) : "")?.[0];
  if (!code) throw new Error(`No clinician's code in ${JSON.stringify(row)}`);
  return code;
}
