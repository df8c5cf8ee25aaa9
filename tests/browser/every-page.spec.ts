import { type APIRequestContext, expect, request, test } from "@playwright/test";
import { addressTable, answerTo, type Line } from "./address-table";
import { everybody, known, stateOf, type Who } from "./everybody";
import { pagesAndRoutes } from "./project-pages";
import { tamperedAddresses } from "./tampered-addresses";

test.describe.configure({ mode: "parallel" });

test("Every page and every method of every route stands in the table of addresses", () => {
  const listed = new Set(addressTable(known()).map((line) => line.of));
  expect([...listed].sort()).toEqual(pagesAndRoutes().sort());
});

for (const who of ["nobody", ...everybody] as const) {
  test(`Every page and route answers ${who} as it should`, async () => {
    const context = await as(who);
    for (const line of addressTable(known())) {
      if (line.endsSession && who !== "nobody") continue;
      const answer = await ask(context, line);
      const status = answer.status();
      const leads = status >= 300 && status < 400;
      const got = leads ? `to ${pathOf(answer.headers().location)}` : status;
      expect.soft(got, `${line.of} at ${line.address} as ${who}`).toBe(answerTo(line, who));
      if (status !== 200 || !answer.headers()["content-type"]?.includes("html")) continue;
      expect.soft(failedParts(await answer.text()), `parts of ${line.address} as ${who}`).toEqual([]);
    }
    await context.dispose();
  });
}

test("Tampered addresses are answered by a plain page", async () => {
  const contexts = new Map<Who, APIRequestContext>();
  for (const { who, address, says } of tamperedAddresses(known())) {
    const context = contexts.get(who) ?? (await as(who));
    contexts.set(who, context);
    const answer = await context.get(address, { maxRedirects: 0 });
    expect.soft(answer.status(), `${address} as ${who}`).toBeLessThan(500);
    const text = await answer.text();
    if (answer.headers()["content-type"]?.includes("html")) {
      expect.soft(failedParts(text), `parts of ${address} as ${who}`).toEqual([]);
    }
    if (says) expect.soft(text, `${address} as ${who}`).toContain(says);
  }
});

test("A visit that is not one's own is refused in the same words whether it exists or not", async () => {
  const { visit } = known();
  const refusals = async (who: Who, addresses: string[]) => {
    const context = await as(who);
    const texts = addresses.map(async (address) => refusalIn(await (await context.get(address)).text()));
    return new Set(await Promise.all(texts));
  };
  const there = await refusals("clinician M-03", [
    `/visits/MEDLAR/${visit.other}`,
    "/visits/MEDLAR/no-such-visit",
    `/visits/SPINDLE/${visit.spindle}`,
  ]);
  expect([...there]).toEqual([expect.stringContaining("visits that you worked on")]);
  const beyond = await refusals("MEDLAR lead", [`/visits/SPINDLE/${visit.spindle}`, "/visits/SPINDLE/no-such-visit"]);
  expect([...beyond]).toEqual([expect.stringContaining("not yours to see")]);
});

async function as(who: Who): Promise<APIRequestContext> {
  const baseURL = process.env.CANAL_AUDIT_URL ?? "";
  return request.newContext({ baseURL, storageState: stateOf(who), extraHTTPHeaders: { origin: baseURL } });
}

function ask(context: APIRequestContext, { of, address, form }: Line) {
  if (!form) return context.get(address, { maxRedirects: 0 });
  // The sign-in's own addresses are asked in JSON.
  if (of.includes("api/auth")) return context.post(address, { data: form, maxRedirects: 0 });
  return context.post(address, { multipart: form, maxRedirects: 0 });
}

function pathOf(location: string | undefined): string {
  return new URL(location ?? "", "http://here").pathname;
}

/** Marks of parts that failed after the page had begun, by which Next tells the browser of an error. */
function failedParts(html: string): string[] {
  return [...html.matchAll(/<template data-dgst="([^"]*)"/g)].map(([, digest]) => digest ?? "");
}

/** The refusal's sentence as it travels in the page (app/_parts/refusal.ts). */
function refusalIn(html: string): string | undefined {
  return /;403;([^"\\<]+)/.exec(html)?.[1];
}
