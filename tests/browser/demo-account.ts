import { readFileSync } from "node:fs";
import { join } from "node:path";

/** Somebody of the demo who can sign in. */
export interface DemoAccount {
  email: string;
  password: string;
  role: string;
}

/** The accounts of the running application's demo, as its home keeps them. */
export function demoAccounts(): DemoAccount[] {
  const home = process.env.CANAL_AUDIT_HOME;
  if (!home)
    throw new Error("CANAL_AUDIT_HOME is not set: these specs are run by playwright.config.ts.");
  return JSON.parse(readFileSync(join(home, "demo-accounts.json"), "utf8")) as DemoAccount[];
}

/** The first demo account of this role. */
export function demoAccount(role: string): DemoAccount {
  const found = demoAccounts().find((account) => account.role === role);
  if (!found) throw new Error(`The demo has nobody who is ${role}.`);
  return found;
}
