import { existsSync, readFileSync } from "node:fs";
import { expect, request, test } from "@playwright/test";
import { callAction } from "./action-calls";
import { calls } from "./action-table";
import { accountOf, everybody, fileInHome, known, stateOf } from "./everybody";
import { logName } from "./running-app";

// Expected values are the project's own rule: no secret is written down where others read.

test("The log of the running tool holds no password, session, key or address of the database", async () => {
  test.skip(!existsSync(fileInHome(logName)), "The application was started elsewhere.");
  await provoke();
  // The database's own log stands beside it.
  const log = [logName, "postgres.log"].map(textIn).join("\n");
  expect(textIn(logName), "a log without words proves nothing").toContain("elsewhere.example");
  const cookies = everybody.flatMap((who) => {
    const state = stateOf(who);
    if (typeof state !== "string") return [];
    const kept = JSON.parse(readFileSync(state, "utf8")) as { cookies: { value: string }[] };
    // The token, and as it is signed.
    return kept.cookies.flatMap(({ value }) => [
      value,
      decodeURIComponent(value).split(".")[0] ?? value,
    ]);
  });
  expect(cookies.length).toBeGreaterThan(everybody.length);
  const secrets = [
    ...everybody.map((who) => accountOf(who).password),
    ...cookies,
    ...["sign-in-secret", "patient-key"].map((name) => textIn(name)),
  ].filter((secret) => secret !== "");
  expect(secrets.filter((secret) => log.includes(secret))).toEqual([]);
  expect(log).not.toMatch(/postgres(ql)?:\/\/|DATABASE_URL|BETTER_AUTH_SECRET/);
});

/** What makes a server write something. */
async function provoke(): Promise<void> {
  const [call] = calls(known());
  if (!call) throw new Error("There is no action.");
  const { action, address, form } = call;
  await callAction("administrator", action, address, form, "https://elsewhere.example");
  const baseURL = process.env.CANAL_AUDIT_URL ?? "";
  const context = await request.newContext({ baseURL, storageState: stateOf("administrator") });
  const data = accountOf("administrator");
  for (const origin of ["https://elsewhere.example", baseURL]) {
    const headers = { origin };
    await context.post("/api/auth/sign-in/email", { headers, data: { ...data, password: "-" } });
    await context.post("/api/auth/sign-in/email", { headers, data: `${JSON.stringify(data)}}` });
  }
  await context.dispose();
}

function textIn(name: string): string {
  return existsSync(fileInHome(name)) ? readFileSync(fileInHome(name), "utf8").trim() : "";
}
