import { readFile } from "node:fs/promises";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { known, type Somebody, stateOf } from "./everybody";

// Expected values are the project's own rules of an audit, and what was typed by the test itself.

test.describe.configure({ timeout: 180_000 });

async function pageOf(browser: Browser, who: Somebody): Promise<Page> {
  return (await browser.newContext({ storageState: stateOf(who) })).newPage();
}

/** The text is kept: nothing is on its way any more. */
async function kept(page: Page, label: string): Promise<void> {
  const field = page.locator(".shared-text").filter({ hasText: label });
  await expect(field.getByRole("status")).toHaveText(/^Kept/);
}

test("Two people typing into one text at once, in two browsers, lose nothing of either's", async ({
  browser,
}) => {
  const address = `/audits/${known().audits.medlar}/scope`;
  const [one, other] = [await pageOf(browser, "group lead"), await pageOf(browser, "MEDLAR lead")];
  const mark = Date.now().toString(36);
  const words = (who: string) => Array.from({ length: 8 }, (_, at) => `${who}${at}-${mark}`);
  await Promise.all([one.goto(address), other.goto(address)]);
  const [first, second] = [one, other].map((page) => page.getByLabel("Why this audit"));
  if (!first || !second) throw new Error("no text to type into");
  await first.press("Control+End");
  await second.press("Control+Home");
  await Promise.all([
    first.pressSequentially(` ${words("a").join(" ")}`, { delay: 60 }),
    second.pressSequentially(`${words("b").join(" ")} `, { delay: 60 }),
  ]);
  for (const page of [one, other]) {
    await kept(page, "Why this audit");
    for (const word of [...words("a"), ...words("b")])
      await expect(page.getByLabel("Why this audit")).toHaveValue(new RegExp(word), {
        timeout: 20_000,
      });
  }
  await one.reload();
  for (const word of [...words("a"), ...words("b")])
    await expect(one.getByLabel("Why this audit")).toHaveValue(new RegExp(word));
});

test("From beginning to signature, its PDF and the re-audit, as a lead and a clinician would", async ({
  browser,
}) => {
  const [lead, clinician] = [
    await pageOf(browser, "MEDLAR lead"),
    await pageOf(browser, "clinician M-03"),
  ];
  await lead.goto("/audits");
  await lead.getByLabel("Period").selectOption("2026-Q2");
  await lead.getByRole("button", { name: "Begin" }).click();
  await lead.waitForURL(/\/audits\/\d+\/scope/);
  const base = lead.url().replace(/\/scope$/, "");
  await lead.getByLabel("Why this audit").fill("To see whether irrigation is as agreed.");
  await kept(lead, "Why this audit");

  await lead.goto(`${base}/data`);
  for (const [place, area] of (await lead.getByLabel("What is made of it").all()).entries()) {
    await area.fill(`Known, and with the record keeper (${place}).`);
    await expect(lead.locator(".shared-text").nth(place).getByRole("status")).toHaveText(/^Kept/);
  }

  await lead.goto(`${base}/confirming`);
  await lead.getByLabel("Last day").fill("2199-01-01");
  await lead.getByRole("button", { name: "Open the window" }).click();
  await expect(lead.getByText("Open until 1 Jan 2199.")).toBeVisible();

  await clinician.goto("/clinician");
  await clinician.getByRole("link", { name: /April to June 2026: You are asked/ }).click();
  await clinician.getByLabel("Visit", { exact: true }).selectOption({ index: 2 });
  await clinician.getByLabel("What is the matter").selectOption("wrong");
  await clinician.getByLabel("In a sentence").fill("The volume is another canal's.");
  await clinician.getByRole("button", { name: "Say so" }).click();
  await expect(clinician.getByText("Not answered yet.")).toBeVisible();
  await clinician.getByRole("button", { name: "Confirm my records" }).click();
  await expect(clinician.getByText("You confirmed on")).toBeVisible();

  await lead.reload();
  await lead.getByLabel("Answer", { exact: true }).fill("Put right in the record.");
  await lead.getByRole("button", { name: "Answer", exact: true }).click();
  await expect(lead.getByText("Answered: Put right in the record.")).toBeVisible();
  await lead.getByRole("button", { name: "Close it now" }).click();
  await expect(lead.getByText("Closed by")).toBeVisible();

  await lead.goto(`${base}/look`);
  const looks = await lead.getByRole("button", { name: "End the look here" }).count();
  expect(looks).toBeGreaterThan(0);
  for (let left = looks; left > 0; left -= 1) {
    const item = lead.locator("section.section").filter({ hasText: "End the look here" }).first();
    await item.getByLabel("Records", { exact: true }).fill("Twenty were opened and are right.");
    // The step that follows opens by itself once this one is written.
    await expect(item.getByLabel("Cases", { exact: true })).toBeVisible();
    await item.getByLabel("It ended at").selectOption("data");
    await item.getByRole("button", { name: "End the look here" }).click();
    await expect(lead.getByRole("button", { name: "End the look here" })).toHaveCount(left - 1);
  }

  await lead.goto(`${base}/actions`);
  await lead.getByLabel("What", { exact: true }).fill("A timer at every chair");
  await lead.getByLabel("Why", { exact: true }).fill("Records are incomplete.");
  await lead.getByLabel("About").selectOption("criterion/hypochlorite-floor");
  await lead.getByLabel("Who sees to it").selectOption({ index: 1 });
  await lead.getByLabel("By", { exact: true }).fill("2026-07-31");
  await lead.getByLabel("How we will know").fill("The criterion is reached.");
  await lead.getByRole("button", { name: "Agree" }).click();
  await expect(lead.locator("#agreed")).toContainText("open, due since 31 Jul 2026");

  await lead.goto(`${base}/signature`);
  await lead.getByLabel("Summary").fill("Irrigation is mostly as agreed.");
  await kept(lead, "Summary");
  await lead.reload();
  await expect(lead.getByText("Still missing")).toHaveCount(0);
  await lead.getByLabel(/I have read/).check();
  await lead.getByRole("button", { name: "Sign", exact: true }).click();
  await expect(lead.locator("p.note").first()).toContainText("Signed as version 1");

  await lead.goto(`${base}/report`);
  const download = lead.waitForEvent("download");
  await lead.getByRole("link", { name: "Export as PDF" }).click();
  const file = await readFile(await (await download).path());
  const pdf = await getDocument({ data: new Uint8Array(file) }).promise;
  const { info } = await pdf.getMetadata();
  expect(info).toMatchObject({
    Title: "Audit of practice MEDLAR, April to June 2026",
    Language: "en-GB",
  });
  expect((await pdf.getOutline()).map(({ title }) => title)).toEqual(
    expect.arrayContaining(["Standards", "Records", "Results", "Closer look", "Actions"]),
  );

  await lead.goto(`${base}/history`);
  await expect(lead.getByText(/^Unchanged:/)).toBeVisible();

  await lead.goto(`${base}/signature`);
  await lead.getByRole("button", { name: "Re-audit the next quarter" }).click();
  await lead.waitForURL(
    (url) => /\/audits\/\d+\/scope/.test(url.pathname) && !url.href.startsWith(base),
  );
  await expect(lead.locator("#earlier")).toContainText("A timer at every chair");
  await lead.goto(lead.url().replace(/scope$/, "results"));
  await expect(lead.locator("#since")).toContainText("Hypochlorite volume at or over the floor");
  await expect(lead.locator("#since")).toContainText("95 % interval");
});
