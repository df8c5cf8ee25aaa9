import { expect, test } from "@playwright/test";
import { cast } from "@/seed/cast";
import { addressTable } from "./address-table";
import { everybody, known, type Somebody, stateOf } from "./everybody";

// Expected values are the project's own rules of what may be seen; codes are those of the demo's cast.

const codes = [...new Set(cast.map((one) => one.code))];
/** Periods of the scenario, so that everybody of the cast is in one of them. */
const periods = ["2024-Q4", "2025-Q2", "2025-Q4", "2026-Q1", "2026-Q2", "2024-10-01..2026-11-20"];

test("Neither the quality officer's pages nor the file carry a clinician's code", async ({
  browser,
}) => {
  const read = await reader(browser, "quality officer");
  for (const period of periods) {
    for (const path of ["/quality", "/quality/report", "/api/quality/adherence"]) {
      expect(codesIn(await read(`${path}?period=${period}`)), `${path} in ${period}`).toEqual([]);
    }
  }
});

for (const [who, own] of [
  ["clinician M-03", ["M-03"]],
  ["clinician M-06", ["M-06", "Q-16"]],
] as const) {
  test(`The page of ${who} carries nobody else's code`, async ({ browser }) => {
    const read = await reader(browser, who);
    const found = new Set<string>();
    for (const period of periods) {
      const page = await read(`/clinician?period=${period}`);
      const others = codesIn(page).filter((code) => !own.some((one) => one === code));
      expect(others, period).toEqual([]);
      for (const code of codesIn(page)) found.add(code);
    }
    expect(found.size, "a page that names nobody proves nothing").toBeGreaterThan(0);
  });
}

test("The record keeper's and the administrator's pages show no figure", async ({ browser }) => {
  for (const who of ["record keeper", "administrator"] as const) {
    const context = await browser.newContext({ storageState: stateOf(who) });
    const page = await context.newPage();
    for (const { address } of addressTable(known()).filter(
      ({ of, answers }) => of.endsWith("page.tsx") && answers[who] === 200,
    )) {
      await page.goto(address);
      await expect(
        page.locator(".estimate, .interval, .chart"),
        `${address} as ${who}`,
      ).toHaveCount(0);
    }
    await context.close();
  }
});

test("No page shows a patient's reference as the files have it", async ({ browser }) => {
  for (const who of everybody) {
    const read = await reader(browser, who);
    for (const { address, answers } of addressTable(known())) {
      if (answers[who] !== 200) continue;
      // The demo's references are "medlar-pt-31" and the like (seed/make-practice.ts).
      expect((await read(address)).match(/\b[a-z]+-pt-\d+/), `${address} as ${who}`).toBeNull();
    }
  }
});

type Browser = Parameters<Parameters<typeof test>[2]>[0]["browser"];

async function reader(browser: Browser, who: Somebody) {
  const context = await browser.newContext({ storageState: stateOf(who) });
  return async (address: string) => (await context.request.get(address)).text();
}

function codesIn(text: string): string[] {
  return codes.filter((code) => new RegExp(`(?<![\\w-])${code}(?![\\w-])`).test(text));
}
