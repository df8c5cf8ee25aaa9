import { expect, type Locator, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { firstNumber } from "./table-rows";

// Expected figures are computed from what the page shows before and after; no figure is written here.

test("The clinician excepts a unit from the page that says why it missed, the lead asks, both settle it, and it is withdrawn", async ({
  browser,
}) => {
  const clinician = await (
    await browser.newContext({ storageState: stateOf("clinician M-03") })
  ).newPage();
  const excepted = "/units/criterion/timer-reset?period=2026-Q2&outcome=excepted";
  await clinician.goto(excepted);
  const before = firstNumber(await countOf(clinician.locator("main")));

  await clinician.goto("/units/criterion/timer-reset?period=2026-Q2&outcome=not-met");
  await clinician.locator("td a.mark").first().click();
  await expect(clinician.locator(".finding")).toContainText("not met");
  await expect(clinician.locator("#met")).toContainText("This settled it");
  await expect(clinician.locator("#met")).toContainText(/line \d/);
  await clinician.getByRole("link", { name: "Exception", exact: true }).click();
  await expect(clinician).toHaveURL(/\/exceptions\//);
  const at = clinician.url();
  await clinician.getByLabel("Reason").selectOption("equipment-failure");
  await clinician.getByLabel("Note, if one is needed").fill("the display was dark");
  await clinician.getByRole("button", { name: "Enter the exception" }).click();
  await expect(clinician.locator("#there")).toContainText(/equipment fail/);
  await clinician.goto(excepted);
  expect(firstNumber(await countOf(clinician.locator("main")))).toBe(before + 1);

  const lead = await (await browser.newContext({ storageState: stateOf("MEDLAR lead") })).newPage();
  await lead.goto(at);
  await lead.getByText("Ask about this exception").click();
  await lead.getByLabel("Your question").fill("Which chair was it?");
  await lead.getByRole("button", { name: "Ask" }).click();
  await expect(lead.locator("#there")).toContainText("Which chair was it?");

  await clinician.goto(at);
  await clinician.getByLabel("Your answer").fill("The one by the window.");
  await clinician.getByRole("button", { name: "Answer" }).click();
  await expect(clinician.locator("#there")).toContainText("The one by the window.");

  await lead.goto(at);
  await lead.getByRole("button", { name: "Close the question" }).click();
  await expect(lead.locator("#there")).toContainText(/closed/i);

  await clinician.goto(at);
  await clinician.getByRole("button", { name: "Withdraw" }).click();
  // Not only that the button is gone: it bears another name as long as the withdrawing is under way.
  await expect(clinician.locator("#there")).toContainText("The exception is withdrawn.");
  await expect(clinician.getByRole("button", { name: "Withdraw" })).toHaveCount(0);
  await clinician.goto(excepted);
  expect(firstNumber(await countOf(clinician.locator("main")))).toBe(before);
  await clinician.context().close();
  await lead.context().close();
});

/** "1 to 4 of 4, latest first": how many there are; none is 0. */
async function countOf(main: Locator): Promise<string> {
  const words = await main.locator("p.soft").first().textContent();
  return (words ?? "").replace(/^.* of /, "").replace("No unit is like this.", "0");
}
