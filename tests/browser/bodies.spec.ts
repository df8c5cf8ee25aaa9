import { expect, request, test } from "@playwright/test";
import { callAction } from "./action-calls";
import { known, stateOf } from "./everybody";

// Expected values: the limits are the project's own (next.config.ts, lib/reports/sign-in.ts, app/api/sent-json.ts); the
// status is that of RFC 9110, 15.5.14 (published).

const baseURL = process.env.CANAL_AUDIT_URL ?? "";

test("A form of a page is taken up to a megabyte", async () => {
  const form = { current: "-", next: "x".repeat(1_500_000) };
  const answer = await callAction(
    "record keeper",
    "app/account/acts.ts changePasswordAct",
    "/account",
    form,
  );
  // Next's own answer to an action whose form is too large.
  expect(answer.status()).toBe(500);
  expect(await answer.text()).not.toMatch(/"(wrong|done)"/);
});

test("What is sent as JSON is taken up to four megabytes", async () => {
  const context = await request.newContext({ baseURL, storageState: stateOf("group lead") });
  const address = `/api/audits/${known().audits.group}/text`;
  const data = { key: "purpose", begun: 0, text: "x".repeat(4_100_000) };
  expect((await context.post(address, { data })).status()).toBe(413);
  await context.dispose();
});

test("An email and a password are taken up to ten thousand bytes", async () => {
  const context = await request.newContext({ baseURL, extraHTTPHeaders: { origin: baseURL } });
  const data = { email: "nobody@tests.example", password: "x".repeat(10_000) };
  expect((await context.post("/api/auth/sign-in/email", { data })).status()).toBe(413);
  await context.dispose();
});
