import { type APIResponse, type BrowserContext, expect, request, test } from "@playwright/test";
import { addressTable } from "./address-table";
import { everybody, known, stateOf, type Who } from "./everybody";

// Expected values are the project's own rules of what a page may do (proxy.ts, next.config.ts); the names and what
// they mean are those of W3C, Content Security Policy Level 3 (source).

test.describe.configure({ mode: "parallel", timeout: 360_000 });

const baseURL = process.env.CANAL_AUDIT_URL ?? "";

test("Every kind of answer bears its headers", async () => {
  const context = await as("group lead");
  for (const address of ["/lead", "/lead/measures/volume", "/no-such-page", "/quality"]) {
    const headers = (await context.get(address)).headers();
    expect(headers, address).toMatchObject({
      "x-content-type-options": "nosniff",
      "referrer-policy": "same-origin",
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
      "permissions-policy": expect.stringContaining("camera=()"),
      "cache-control": expect.stringContaining("no-store"),
    });
    expect(headers, address).not.toHaveProperty("strict-transport-security");
    expect(headers, address).not.toHaveProperty("x-powered-by");
    const policy = headers["content-security-policy"] ?? "";
    expect(policy, address).toMatch(/script-src 'nonce-[A-Za-z0-9+/=]{24}' 'strict-dynamic'(;|$)/);
    for (const part of [
      ...["default-src 'none'", "object-src 'none'", "base-uri 'none'", "form-action 'self'"],
      ...["frame-ancestors 'none'", "script-src-attr 'none'", "style-src 'self'"],
    ]) {
      expect(policy, address).toContain(part);
    }
  }
  for (const address of ["/api/quality/upkeep", "/api/none"]) {
    const headers = (await context.get(address)).headers();
    expect(headers["content-security-policy"], address).toContain("default-src 'none'");
    expect(headers["cache-control"], address).toContain("no-store");
  }
  await context.dispose();
});

test("Behind TLS a browser is told to stay with it", async () => {
  const context = await as("nobody", { "x-forwarded-proto": "https" });
  for (const address of ["/sign-in", "/api/quality/upkeep", "/icon.svg"]) {
    const { "strict-transport-security": told } = (await context.get(address)).headers();
    expect(told, address).toBe("max-age=31536000");
  }
  await context.dispose();
});

test("A nonce is of one answer, and every script of a page bears it", async () => {
  const context = await as("group lead");
  const nonces = new Set<string>();
  for (const address of ["/lead", "/lead", "/sign-in", "/lead/measures/volume"]) {
    const answer = await context.get(address);
    const nonce = nonceOf(answer);
    nonces.add(nonce);
    const html = await answer.text();
    const scripts = html.match(/<script\b[^>]*>/g) ?? [];
    expect(scripts.length, address).toBeGreaterThan(0);
    expect(scripts.filter((script) => !script.includes(`nonce="${nonce}"`))).toEqual([]);
    expect(html.match(/<[^>]+\son[a-z]+=/g), address).toBeNull();
    expect(html.match(/<style\b/g), address).toBeNull();
  }
  expect(nonces.size).toBe(4);
  await context.dispose();
});

test("A nonce that a request brings along is not used", async () => {
  const context = await as("nobody", { "content-security-policy": "script-src 'nonce-mine'" });
  const answer = await context.get("/sign-in");
  expect(nonceOf(answer)).not.toBe("mine");
  expect(await answer.text()).not.toContain('nonce="mine"');
  await context.dispose();
});

/** Their pages are those that another is tried on. */
const seenByOthers: readonly Who[] = [
  ...(["MEDLAR lead", "clinician M-06"] as const),
  ...(["SPINDLE quality officer", "SPINDLE record keeper", "SPINDLE administrator"] as const),
];

for (const who of ["nobody", ...everybody] as const) {
  if (seenByOthers.includes(who)) continue;
  test(`No page of ${who} does what its policy forbids`, async ({ browser }) => {
    const context = await browser.newContext({ storageState: stateOf(who) });
    const said = await listen(context);
    for (const address of addressesOf(who)) {
      const page = await context.newPage();
      page.on("console", (message) => {
        if (/content.security.policy/i.test(message.text())) said.push(message.text());
      });
      await page.goto(address);
      await expect(page.locator("h1")).toHaveCount(1);
      await expect(page.locator(".skeleton-line")).toHaveCount(0);
      // Scripts run: what waits for them is there.
      await page.waitForLoadState("networkidle");
      expect.soft(said, `${address} as ${who}`).toEqual([]);
      said.length = 0;
      await page.close();
    }
    await context.close();
  });
}

test("An inline script that got into a page is not run", async ({ browser }) => {
  const context = await browser.newContext({ storageState: stateOf("group lead") });
  const said = await listen(context);
  await context.route("**/lead", async (route) => {
    const answer = await route.fetch();
    const html = (await answer.text()).replace("</body>", "<script>window.got = 1</script></body>");
    await route.fulfill({ response: answer, body: html });
  });
  const page = await context.newPage();
  await page.goto("/lead");
  await expect(page.locator("h1")).toHaveCount(1);
  expect(await page.evaluate(() => "got" in window)).toBe(false);
  await expect.poll(() => said).toContainEqual(expect.stringContaining("script-src-elem"));
  await context.close();
});

/** What the pages of a context are kept from doing, as they are. */
async function listen(context: BrowserContext): Promise<string[]> {
  const said: string[] = [];
  await context.exposeFunction("tellViolation", (text: string) => said.push(text));
  await context.addInitScript(() => {
    const { tellViolation } = window as unknown as { tellViolation: (text: string) => void };
    document.addEventListener("securitypolicyviolation", (event) =>
      tellViolation(`${event.effectiveDirective}: ${event.blockedURI} ${event.sample}`),
    );
  });
  return said;
}

/** Each page once that is open to somebody, one that is refused, one that is not there. */
function addressesOf(who: Who): string[] {
  if (who === "nobody") return ["/sign-in", "/lead"];
  const pages = addressTable(known()).filter(({ of }) => of.endsWith("page.tsx"));
  const open = new Map(
    pages.filter((line) => line.answers[who] === 200).map(({ of, address }) => [of, address]),
  );
  const refused = pages.filter((line) => !(who in line.answers)).slice(1, 2);
  return [...open.values(), ...refused.map(({ address }) => address), "/no-such-page"];
}

function nonceOf(answer: APIResponse): string {
  const policy = answer.headers()["content-security-policy"] ?? "";
  return /'nonce-([^']+)'/.exec(policy)?.[1] ?? "";
}

function as(who: Who, extraHTTPHeaders: Record<string, string> = {}) {
  return request.newContext({ baseURL, storageState: stateOf(who), extraHTTPHeaders });
}
