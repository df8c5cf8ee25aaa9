import { readFile } from "node:fs/promises";
import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { signInTo } from "./sign-in";

// Expected values are the project's own rules of what leaves a line in the log and what goes with a leaver.

test("The log tells the administrator who signed in and saw what, by day and person, and names no patient", async ({
  page,
  browser,
}) => {
  const lead = await browser.newContext({ storageState: stateOf("MEDLAR lead") });
  const theirs = await lead.newPage();
  await theirs.goto("/lead?period=2026-Q2");
  const name = ((await theirs.locator(".site-person a").textContent()) ?? "").trim();
  await lead.close();

  await signInTo(page, "/administration/log", "administrator");
  const lines = page.getByRole("table");
  await page.goto("/administration/log?before=4");
  await expect(lines).toContainText("brought the demo's records in");
  await page.goto("/administration/log");
  await expect(lines).toContainText("signed in");
  const person = page.getByLabel("Person");
  const option = page.locator("#log-person option").filter({ hasText: name });
  await person.selectOption((await option.getAttribute("value")) ?? "");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/person=/);
  await expect(lines.getByRole("row").nth(1)).toContainText(name);
  await expect(lines).toContainText("the practice's quarter by clinician");
  const whose = await lines.locator("tbody td:nth-of-type(2)").allInnerTexts();
  expect(new Set(whose)).toEqual(new Set([name]));
  await page.getByLabel("Day").fill("2001-01-01");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page.getByText("No line.")).toBeVisible();
});

test("A leaver's data is handed out, then account and name go, and the log keeps the lines", async ({
  page,
}) => {
  const leaver = { name: "Perrin Oakhollow", email: "perrin.oakhollow@tests.example" };
  await signInTo(page, "/administration", "administrator");
  await page.getByLabel("Name", { exact: true }).fill(leaver.name);
  await page.getByLabel("Email").fill(leaver.email);
  await page.getByLabel("Role", { exact: true }).selectOption("quality-officer");
  await page.getByLabel("Where").selectOption("SPINDLE");
  await page.getByRole("button", { name: "Add the person" }).click();
  await page.getByRole("link", { name: leaver.name }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(leaver.name);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Download it as one JSON file" }).click(),
  ]);
  const data = JSON.parse(await readFile(await download.path(), "utf8"));
  expect(data.account[0]).toMatchObject({ name: leaver.name, email: leaver.email });

  const leave = page.getByRole("form", { name: "Has left" });
  await leave.getByRole("button").click();
  await expect(leave).toContainText("Tick that");
  await leave.getByLabel(`${leaver.name} has left for good`).check();
  await leave.getByRole("button").click();
  await expect(page).toHaveURL(/\/administration$/);
  await expect(page.getByRole("table")).not.toContainText(leaver.name);
  await page.goto("/administration/log");
  await expect(page.getByRole("table")).toContainText("removed a leaver's account and name");
  await expect(page.locator("main")).not.toContainText(leaver.name);
});
