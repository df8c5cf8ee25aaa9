import { expect, type Page } from "@playwright/test";
import { accountOf, type Somebody } from "./everybody";

/** Opens an address as nobody, signs in by the form and is led on to what was asked for. */
export async function signInTo(page: Page, address: string, somebody: Somebody): Promise<void> {
  await page.goto(address);
  await expect(page).toHaveURL(/\/sign-in/);
  const { email, password } = accountOf(somebody);
  await typeIn(page, email, password);
  // The page led to is computed first where nobody has asked for it since the records changed.
  await expect(page).not.toHaveURL(/\/sign-in/, { timeout: 20_000 });
}

/** Fills in the sign-in and sends it. */
export async function typeIn(page: Page, email: string, password: string): Promise<void> {
  await page.getByLabel("Email").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
}
