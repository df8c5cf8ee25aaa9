import { gzipSync } from "node:zlib";
import { chromium, type Page } from "@playwright/test";
import { demoAccount } from "../../browser/demo-account";
import { findChromium } from "../../find-chromium";

/** Kilobytes (1000) of JavaScript, each file packed by gzip at its usual level, that a page's first opening loads. */
export type FirstLoad = {
  readonly page: string;
  readonly before: number;
  /** Files that hold the charts, loaded beside the others. */
  readonly charts: number;
};

/** Pages as each role first sees them, on the demo. */
const pages: Readonly<Record<string, readonly string[]>> = {
  "clinical-lead": [
    "/lead",
    "/lead/measures/volume?period=2026-Q2",
    "/lead/measures/criterion/isolation?period=2026-Q2",
    "/audits",
    "/protocol",
    "/exceptions",
  ],
  clinician: ["/clinician", "/clinician/audits"],
  "quality-officer": ["/quality", "/quality/report", "/safety", "/upkeep"],
  "record-keeper": ["/records", "/records/held", "/records/mappings"],
  administrator: ["/administration", "/administration/log", "/account"],
};

/** Opens each page with nothing cached. */
export async function firstLoad(url: string): Promise<FirstLoad[]> {
  const browser = await chromium.launch({
    executablePath: findChromium() ?? undefined,
    args: ["--no-sandbox"],
  });
  try {
    const found: FirstLoad[] = [];
    for (const [role, some] of Object.entries(pages)) {
      const context = await browser.newContext();
      const page = await context.newPage();
      found.push(await weighed(page, `${url}/sign-in`));
      const { email, password } = demoAccount(role);
      await page.getByLabel("Email").fill(email);
      await page.getByLabel("Password").fill(password);
      await page.getByRole("button", { name: "Sign in" }).click();
      await page.waitForURL((at) => !at.pathname.startsWith("/sign-in"));
      const state = await context.storageState();
      for (const one of some) {
        // A context of its own for each, as a browser that has nothing yet.
        const fresh = await browser.newContext({ storageState: state });
        found.push(await weighed(await fresh.newPage(), url + one));
        await fresh.close();
      }
      await context.close();
    }
    return found.filter(({ page }, place) => found.findIndex((one) => one.page === page) === place);
  } finally {
    await browser.close();
  }
}

async function weighed(page: Page, address: string): Promise<FirstLoad> {
  const bodies: Promise<Buffer>[] = [];
  page.on("response", (answer) => {
    if (/\.js(\?|$)/.test(answer.url())) bodies.push(answer.body());
  });
  const answer = await page.goto(address, { waitUntil: "networkidle" });
  if (answer?.status() !== 200) throw new Error(`${address} answered ${answer?.status()}`);
  let before = 0;
  let charts = 0;
  for (const body of await Promise.all(bodies)) {
    const size = gzipSync(body).length / 1000;
    if (body.includes("recharts")) charts += size;
    else before += size;
  }
  const { pathname } = new URL(address);
  return { page: pathname, before: Math.round(before), charts: Math.round(charts) };
}
