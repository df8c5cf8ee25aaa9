import { type APIRequestContext, type APIResponse, expect, request, test } from "@playwright/test";
import { type Answer, answerTo, type Line } from "./address-line";
import { addressTable } from "./address-table";
import { everybody, known, stateOf, type Who } from "./everybody";
import { pagesAndRoutes } from "./project-pages";
import { tamperedAddresses } from "./tampered-addresses";

// Expected values are the project's own rules of who may see what; statuses as RFC 9110 has them.

test.describe.configure({ mode: "parallel" });

test("Every page and every method of every route stands in the table of addresses", () => {
  const listed = new Set(addressTable(known()).map((line) => line.of));
  expect([...listed].sort()).toEqual(pagesAndRoutes().sort());
});

for (const who of ["nobody", ...everybody] as const) {
  test(`Every page and route answers ${who} as it should`, async () => {
    const context = await as(who);
    const lines = addressTable(known()).filter((line) => who === "nobody" || !line.endsSession);
    const got: string[] = [];
    for (const line of lines)
      got.push(`${line.address}: ${await outcomeOf(await ask(context, line))}`);
    expect(got).toEqual(lines.map((line) => `${line.address}: ${answerTo(line, who)}`));
    await context.dispose();
  });
}

for (const who of everybody.filter(
  (one) => one !== "SPINDLE record keeper" && one !== "SPINDLE administrator",
)) {
  test(`Tampered addresses are answered to ${who} by a plain page`, async () => {
    const context = await as(who);
    const wrong: string[] = [];
    for (const { address, says } of tamperedAddresses(known()).filter((one) => one.who === who)) {
      const answer = await context.get(address, { maxRedirects: 0 });
      const outcome = await outcomeOf(answer);
      if (typeof outcome === "string" || outcome >= 500) wrong.push(`${address}: ${outcome}`);
      else if (says && !textOf(await answer.text()).includes(says))
        wrong.push(`${address}: does not say "${says}"`);
    }
    expect(wrong).toEqual([]);
    await context.dispose();
  });
}

test("A visit that is not one's own is refused in the same words whether it exists or not", async () => {
  const { visit } = known();
  const refusals = async (who: Who, addresses: string[]) => {
    const context = await as(who);
    const texts = addresses.map(async (address) =>
      refusalIn(await (await context.get(address)).text()),
    );
    return new Set(await Promise.all(texts));
  };
  const there = await refusals("clinician M-03", [
    `/visits/MEDLAR/${visit.other}`,
    "/visits/MEDLAR/no-such-visit",
    `/visits/SPINDLE/${visit.spindle}`,
  ]);
  expect([...there]).toEqual([expect.stringContaining("visits that you worked on")]);
  const beyond = await refusals("MEDLAR lead", [
    `/visits/SPINDLE/${visit.spindle}`,
    "/visits/SPINDLE/no-such-visit",
  ]);
  expect([...beyond]).toEqual([expect.stringContaining("not yours to see")]);
});

test("An import of another practice alone is not confirmed to a practice's record keeper", async () => {
  const context = await as("SPINDLE record keeper");
  const answer = await context.get(`/records/imports/${known().imports.medlar}`);
  expect(answer.status()).toBe(404);
});

async function as(who: Who): Promise<APIRequestContext> {
  const baseURL = process.env.CANAL_AUDIT_URL ?? "";
  return request.newContext({
    baseURL,
    storageState: stateOf(who),
    extraHTTPHeaders: { origin: baseURL },
  });
}

function ask(context: APIRequestContext, { of, address, form }: Line) {
  if (!form) return context.get(address, { maxRedirects: 0 });
  // The sign-in's own addresses are asked in JSON.
  if (of.includes("api/auth")) return context.post(address, { data: form, maxRedirects: 0 });
  return context.post(address, { multipart: form, maxRedirects: 0 });
}

/** The status, where it leads, or the parts of a page that failed after it had begun. */
async function outcomeOf(answer: APIResponse): Promise<Answer | string> {
  const status = answer.status();
  const { location, "content-type": type } = answer.headers();
  if (status >= 300 && status < 400) return `to ${new URL(location ?? "", "http://here").pathname}`;
  if (status !== 200 || !type?.includes("html")) return status;
  const failed = failedParts(await answer.text());
  return failed.length === 0 ? status : `${status} with parts that failed: ${failed.join(", ")}`;
}

/** Next marks a part that failed by a template with the error's number; without one it is left to the browser to draw. */
function failedParts(html: string): string[] {
  return [...html.matchAll(/<template data-dgst="(\d[^"]*)"/g)].map(([, digest]) => digest ?? "");
}

/** The words as a person reads them, or as JSON has them. */
function textOf(answer: string): string {
  return answer.replaceAll("&#x27;", "'").replaceAll("&quot;", '"');
}

/** The refusal's sentence as it travels in the page (app/_parts/refusal.ts). */
function refusalIn(html: string): string | undefined {
  return /;403;([^"\\<]+)/.exec(html)?.[1];
}
