import { chromium } from "@playwright/test";
import { demoAccount } from "../../browser/demo-account";
import { findChromium } from "../../find-chromium";

/** How long the longest frame took while the page with the largest table was scrolled from its beginning to its end. */
export type Scrolling = {
  readonly page: string;
  readonly rows: number;
  /** Milliseconds between two frames, at most. */
  readonly longest: number;
};

/** Pages with long tables, on the demo. */
const pages = [
  "/lead?period=2026",
  "/units/volume?period=2026",
  "/units/criterion/isolation?period=2026",
  "/exceptions?period=2026",
  "/protocol",
];

/** Opens the pages as the clinical lead and scrolls the one with the most rows of a table. */
export async function scrolling(url: string): Promise<Scrolling> {
  const browser = await chromium.launch({
    executablePath: findChromium() ?? undefined,
    args: ["--no-sandbox"],
  });
  try {
    const page = await browser.newPage();
    const { email, password } = demoAccount("clinical-lead");
    await page.goto(`${url}/sign-in`);
    await page.getByLabel("Email").fill(email);
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in" }).click();
    await page.waitForURL((at) => !at.pathname.startsWith("/sign-in"));
    const counted: { page: string; rows: number }[] = [];
    for (const one of pages) {
      await page.goto(url + one, { waitUntil: "networkidle" });
      counted.push({ page: one, rows: await page.locator("tr").count() });
    }
    const [most] = counted.sort((a, b) => b.rows - a.rows);
    if (!most || most.rows < 10) throw new Error("no page has a table to speak of");
    await page.goto(url + most.page, { waitUntil: "networkidle" });
    // The runner marks the names of functions by one that pages do not have.
    await page.evaluate("globalThis.__name = (of) => of");
    const longest = await page.evaluate(scrolledThrough);
    return { ...most, longest: Math.round(longest) };
  } finally {
    await browser.close();
  }
}

/** Runs in the page: a step of 80 pixels a frame, to the end and back. */
function scrolledThrough(): Promise<number> {
  return new Promise((done) => {
    let last = performance.now();
    let longest = 0;
    let step = 80;
    const move = (now: number) => {
      longest = Math.max(longest, now - last);
      last = now;
      const before = window.scrollY;
      window.scrollBy(0, step);
      if (window.scrollY === before) {
        if (step < 0) return done(longest);
        step = -80;
      }
      requestAnimationFrame(move);
    };
    requestAnimationFrame((now) => {
      last = now;
      requestAnimationFrame(move);
    });
  });
}
