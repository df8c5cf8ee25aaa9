import { execFileSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { join } from "node:path";
import { demoAccount } from "../browser/demo-account";
import runApp from "../browser/running-app";
import { pageSpeed } from "./page-speed";

/** How fast pages answer on the demo, or on the records of a folder. */
export async function pages(records?: string): Promise<void> {
  if (records) process.env.CANAL_AUDIT_DEMO = "no";
  const takeDown = await runApp();
  try {
    const url = process.env.CANAL_AUDIT_URL ?? "";
    if (records) console.log(command("import", records, "--zone", "Europe/London"));
    const query = "?period=2026-Q2";
    const asked: [role: string, pages: string[]][] = [
      ["clinical-lead", [`/lead${query}`, `/lead/measures/volume${query}`]],
      ["quality-officer", [`/quality${query}`]],
    ];
    const runs = [];
    for (const [role, some] of asked) {
      const account = records ? newAccount(role) : demoAccount(role);
      runs.push(...(await pageSpeed(url, account, some, 50)));
    }
    console.table(runs);
    console.log(
      "Milliseconds of 50 answers each, one after the other (promised for the quarter page: p95 under 300)",
    );
  } finally {
    await takeDown();
  }
}

/** @param further words of `people add`, as --clinician and a key */
export function newAccount(
  role: string,
  ...further: string[]
): { email: string; password: string } {
  // One step leads in, as in the demo: what is measured are pages.
  command("people", "second-factor", "not-yet");
  const account = {
    email: `${role}-${randomUUID()}@bench.example`,
    password: "only-for-the-bench",
  };
  const words = ["--role", role, "--name", role, "--email", account.email, ...further];
  command("people", "add", ...words, "--password", account.password);
  return account;
}

/** Runs the command on the home of the application under test; its first lines. */
export function command(...words: string[]): string {
  const tsx = join(process.cwd(), "node_modules/.bin/tsx");
  const start = ["--tsconfig", "lib/command/tsconfig.json", "lib/command/canal-audit.ts"];
  const said = execFileSync(tsx, [...start, ...words], { encoding: "utf8" });
  return said.split("\n").slice(0, 10).join("\n");
}
