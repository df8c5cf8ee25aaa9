import { expect, test } from "@playwright/test";
import { stateOf } from "./everybody";
import { typeIn } from "./sign-in";
import { wordsOf } from "./table-rows";
import { totp } from "./totp";

// Expected values are the project's own rules; codes are computed as RFC 6238 has them (totp.ts).

const person = { name: "Hale Thornaby", email: "hale.thornaby@tests.example" };
const password = "eleven moles in a wet field";
const next = "twelve swifts above the barn";

test("Somebody sets up a second factor, is asked for it, changes the password and signs out everywhere", async ({
  browser,
}) => {
  const administration = await browser.newContext({ storageState: stateOf("administrator") });
  const theirs = await administration.newPage();
  await theirs.goto("/administration");
  await theirs.getByLabel("Name", { exact: true }).fill(person.name);
  await theirs.getByLabel("Email").fill(person.email);
  await theirs.getByLabel("Password").fill(password);
  await theirs.getByLabel("Role", { exact: true }).selectOption("quality-officer");
  await theirs.getByLabel("Where").selectOption("SPINDLE");
  await theirs.getByRole("button", { name: "Add the person" }).click();
  await expect(theirs.getByText(`${person.name} can sign in`)).toBeVisible();

  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto("/account");
  await typeIn(page, person.email, password);
  await expect(page).toHaveURL(/\/account$/);

  const second = page.locator("#second-factor");
  await second.getByLabel("Password, to set it up").fill("not this one");
  await second.getByRole("button", { name: "Set it up" }).click();
  await expect(second).toContainText("This is not your password.");
  await second.getByLabel("Password, to set it up").fill(password);
  await second.getByRole("button", { name: "Set it up" }).click();
  await expect(second.getByRole("img", { name: /QR code/ })).toBeVisible();
  const secret = await wordsOf(second.locator("p code"));
  const recovery = await second.locator("li code").allTextContents();
  expect(recovery).toHaveLength(10);
  await second.getByLabel("Code that the device shows").fill("000000");
  await second.getByRole("button", { name: "Turn it on" }).click();
  await expect(second).toContainText("This is not the code of now");
  await second.getByLabel("Code that the device shows").fill(totp(secret));
  await second.getByRole("button", { name: "Turn it on" }).click();
  await expect(second).toContainText("It is on");

  const elsewhere = await (await browser.newContext()).newPage();
  await elsewhere.goto("/quality?period=2026-Q2");
  await typeIn(elsewhere, person.email, password);
  await expect(elsewhere.getByRole("heading", { level: 1 })).toHaveText("Second step");
  // The password alone opens nothing.
  await elsewhere.goto("/quality");
  await expect(elsewhere).toHaveURL(/\/sign-in\?/);
  await typeIn(elsewhere, person.email, password);
  await elsewhere.getByLabel("Code").fill("000000");
  await elsewhere.getByRole("button", { name: "Go on" }).click();
  await expect(elsewhere.locator(".form-error")).toContainText("not the one of now");
  // The step after this one, which no other test of it has used.
  await elsewhere.getByLabel("Code").fill(totp(secret, Date.now() + 30_000));
  await elsewhere.getByRole("button", { name: "Go on" }).click();
  await expect(elsewhere).toHaveURL(/\/quality$/);

  await page.reload();
  await expect(page.locator("#sessions tbody tr")).toHaveCount(2);
  await page.getByLabel("Password now").fill(password);
  await page.getByLabel("New password").fill("passwordpassword");
  await page.getByRole("button", { name: "Change the password" }).click();
  await expect(page.locator("#password .field-error")).toContainText("first that anybody");
  await page.getByLabel("Password now").fill(password);
  // A password may be pasted (NIST SP 800-63B).
  await page.getByLabel("New password").evaluate((field, text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", text);
    const allowed = field.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }),
    );
    if (allowed) (field as HTMLInputElement).value = text;
  }, next);
  await page.getByRole("button", { name: "Change the password" }).click();
  await expect(page.locator("#password")).toContainText("The password is changed");
  await expect(page.locator("#sessions tbody tr")).toHaveCount(1);
  await elsewhere.goto("/quality");
  await expect(elsewhere).toHaveURL(/\/sign-in/);

  await typeIn(elsewhere, person.email, next);
  await elsewhere.getByLabel("Code").fill(recovery[0] ?? "");
  await elsewhere.getByRole("button", { name: "Go on" }).click();
  await expect(elsewhere).not.toHaveURL(/\/sign-in/);
  await elsewhere.goto("/account");
  await elsewhere.getByRole("button", { name: "Sign out everywhere" }).click();
  await expect(elsewhere).toHaveURL(/\/sign-in/);
  await page.goto("/quality");
  await expect(page).toHaveURL(/\/sign-in/);

  await theirs.reload();
  await theirs.getByRole("link", { name: person.name }).click();
  await theirs.getByRole("button", { name: "Take the second factor away" }).click();
  await expect(theirs.locator("#second-factor")).toHaveCount(0);
  await typeIn(page, person.email, next);
  await expect(page).not.toHaveURL(/\/sign-in/);
  await theirs.getByRole("button", { name: `Remove ${person.name}` }).click();
  await expect(theirs).toHaveURL(/\/administration$/);
  for (const one of [administration, context, elsewhere.context()]) await one.close();
});
