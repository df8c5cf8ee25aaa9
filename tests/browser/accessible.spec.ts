import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { addressTable } from "./address-table";
import { everybody, known, stateOf, type Who } from "./everybody";
import { tamperedAddresses } from "./tampered-addresses";

// The rules are those of axe-core for WCAG 2.2 AA (source: W3C, Web Content Accessibility Guidelines 2.2).

test.describe.configure({ mode: "parallel", timeout: 360_000 });

/** Widths of a desk and of a phone, in CSS pixels. */
const widths = [1440, 360];

/** They are there for their limits; their pages are those that another is tested on. */
const seenByOthers: readonly Who[] = [
  ...(["MEDLAR lead", "clinician M-06"] as const),
  ...(["SPINDLE quality officer", "SPINDLE record keeper", "SPINDLE administrator"] as const),
];

for (const who of ["nobody", ...everybody] as const) {
  if (seenByOthers.includes(who)) continue;
  test(`${who}'s pages on a desk and on a phone: nothing serious for axe, nothing wider than the page`, async ({
    browser,
  }) => {
    const context = await browser.newContext({ storageState: stateOf(who) });
    for (const address of addressesOf(who)) await look(context, address);
    await context.close();
  });
}

test("The report prints without a clipped column", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("quality officer") });
  const page = await context.newPage();
  await page.goto("/quality/report?period=2026-Q2");
  await page.emulateMedia({ media: "print" });
  // A4 on its side less the margins of app/_look/print.css, at 96 CSS pixels an inch: 271 mm.
  const width = 1024;
  await page.setViewportSize({ width, height: 900 });
  const found = await page.locator("table").evaluateAll((all) =>
    all.map((table) => {
      const cells = [...table.querySelectorAll("th, td")];
      return {
        right: Math.max(...cells.map((cell) => cell.getBoundingClientRect().right)),
        clipped: cells
          .filter((cell) => cell.scrollWidth > cell.clientWidth + 1)
          .map((cell) => cell.textContent),
      };
    }),
  );
  expect(found.length).toBeGreaterThan(4);
  for (const table of found) {
    expect(table.right).toBeLessThanOrEqual(width);
    expect(table.clipped).toEqual([]);
  }
  await expect(page.getByRole("button")).toHaveCount(0);
  await context.close();
});

/** Every page that is open to somebody, one refusal, one address that asks for what there is not. */
function addressesOf(who: Who): string[] {
  const pages = addressTable(known()).filter(({ of }) => of.endsWith("page.tsx"));
  if (who === "nobody") return ["/sign-in"];
  const open = pages.filter((line) => line.answers[who] === 200);
  // A median, a rate with its funnel and a criterion are one page with three faces.
  const faces = [
    ...new Map(
      open.map((line) => [
        `${line.of} ${/criterion\/isolation|separation-per-canal/.exec(line.address)?.[0]}`,
        line,
      ]),
    ).values(),
  ];
  const refused = pages.filter((line) => !(who in line.answers)).slice(1, 2);
  const wrong = tamperedAddresses(known()).filter(
    (one) => one.who === who && one.says && !one.address.includes("/api/"),
  );
  return [...faces, ...refused, ...wrong.slice(0, 1)].map((one) => one.address);
}

async function look(context: BrowserContext, address: string): Promise<void> {
  const page = await context.newPage();
  await page.goto(address);
  await expect(page.locator("h1")).toHaveCount(1);
  await expect(page.locator(".skeleton-line")).toHaveCount(0);
  // What is folded is read as well.
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll("details")) fold.open = true;
  });
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    expect.soft(await widerThanThePage(page), `${address} at ${width}`).toEqual([]);
    const { violations, passes } = await new AxeBuilder({ page })
      .options({ resultTypes: ["violations"] })
      .analyze();
    const serious = violations.filter(
      ({ impact }) => impact === "serious" || impact === "critical",
    );
    const told = serious.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .slice(0, 3)
          .map((node) => node.html.slice(0, 160))
          .join(" | ")}`,
    );
    expect.soft(told, `${address} at ${width}`).toEqual([]);
    expect
      .soft(
        passes.map(({ id }) => id),
        `${address} at ${width} was looked at`,
      )
      .toContain("color-contrast");
  }
  await page.close();
}

/** What makes the page scroll sideways; a box that scrolls by itself does not. */
async function widerThanThePage(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const root = document.documentElement;
    if (root.scrollWidth <= root.clientWidth) return [];
    const wide = [...document.querySelectorAll("body *")].filter(
      (element) =>
        element.getBoundingClientRect().right > root.clientWidth + 1 &&
        !element.closest(".table-box"),
    );
    return [
      `${root.scrollWidth} of ${root.clientWidth}`,
      ...wide.slice(-4).map((element) => element.outerHTML.slice(0, 160)),
    ];
  });
}
