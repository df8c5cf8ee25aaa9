import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { signInTo, typeIn } from "./sign-in";
import { wordsOf } from "./table-rows";

// Expected values are the project's own rules of who may do what.

const person = { name: "Odile Farrowmere", email: "odile.farrowmere@tests.example" };

test("The administrator adds a person, gives a role, takes it back and removes the person", async ({
  page,
  browser,
}) => {
  await signInTo(page, "/administration", "administrator");
  await page.getByLabel("Name", { exact: true }).fill(person.name);
  await page.getByLabel("Email").fill(person.email);
  await page.getByLabel("Role", { exact: true }).selectOption("quality-officer");
  await page.getByLabel("Where").selectOption("SPINDLE");
  await page.getByRole("button", { name: "Add the person" }).click();
  const told = page
    .getByRole("status")
    .filter({ hasText: `${person.name} can sign in as ${person.email}` });
  await expect(told).toBeVisible();
  const password = await wordsOf(told.locator("code"));
  expect(password.length).toBeGreaterThanOrEqual(15);
  await page.reload();
  expect(await page.content()).not.toContain(password);

  const theirs = await (await browser.newContext()).newPage();
  await theirs.goto("/");
  await typeIn(theirs, person.email, password);
  // What another made is changed before anything is open.
  await expect(theirs).toHaveURL(/\/account$/);
  await expect(theirs.getByRole("navigation", { name: "Pages" })).toHaveCount(0);
  await theirs.getByLabel("Password now").fill(password);
  await theirs.getByLabel("New password").fill("seven otters under a tin roof");
  await theirs.getByRole("button", { name: "Change the password" }).click();
  await expect(theirs).toHaveURL(/\/quality$/);
  await expect(theirs.getByRole("navigation", { name: "Pages" })).toContainText("Adherence");

  await page.getByRole("link", { name: person.name }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(person.name);
  const give = page.locator("#give");
  await give.getByLabel("Role", { exact: true }).selectOption("record-keeper");
  await give.getByLabel("Where").selectOption("SPINDLE");
  await give.getByRole("button", { name: "Give the role" }).click();
  const roles = page.locator("#roles");
  await expect(roles).toContainText(/Record keeper, Spindle Court/);
  await theirs.goto("/records");
  await expect(theirs.getByRole("heading", { level: 1 })).toHaveText("Records");

  await roles
    .getByRole("form", { name: /Record keeper/ })
    .getByRole("button", { name: "Take back" })
    .click();
  await expect(roles).not.toContainText("Record keeper");
  expect((await theirs.goto("/records"))?.status()).toBe(403);
  await expect(theirs.getByRole("heading", { level: 1 })).toHaveText("Not open to you");

  await page.getByRole("button", { name: `Remove ${person.name}` }).click();
  await expect(page).toHaveURL(/\/administration$/);
  await expect(page.getByRole("table")).not.toContainText(person.name);
  await theirs.goto("/quality");
  await expect(theirs).toHaveURL(/\/sign-in/);
});

test("What is wrong with a new person is said beside its field, and what was typed stays", async ({
  browser,
}) => {
  const context = await browser.newContext({ storageState: stateOf("administrator") });
  const page = await context.newPage();
  await page.goto("/administration");
  await page.getByLabel("Name", { exact: true }).fill(person.name);
  await page.getByLabel("Email").fill("spindle-records@tests.example");
  await page.getByLabel("Password").fill("short");
  await page.getByLabel("Role", { exact: true }).selectOption("clinician");
  await page.getByRole("button", { name: "Add the person" }).click();
  await expect(page.locator(".field-error").first()).toBeVisible();
  await expect(page.getByLabel("Password")).toHaveAccessibleDescription(/15/);
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue(person.name);
  await context.close();
});

test("An administrator of one practice can give no role beyond it", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("SPINDLE administrator") });
  const page = await context.newPage();
  await page.goto("/administration");
  await expect(page.getByLabel("Where").locator("option")).toHaveText(["Spindle Court (SPINDLE)"]);
  expect(await page.content()).not.toMatch(/MEDLAR|QUINCE|\b[MQ]-\d\d\b/);
  await context.close();
});
