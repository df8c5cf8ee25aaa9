import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type APIResponse, request } from "@playwright/test";
import { z } from "zod";
import { projectFolder } from "@/lib/store/home/project-folder";
import { stateOf, type Who } from "./everybody";

const manifest = z.object({
  node: z.record(z.string(), z.object({ filename: z.string(), exportedName: z.string() })),
});

/**
 * Calls a server action as a browser's script would, whatever the page shows to somebody: the action's id stands in
 * the build, and a form arrives as the second argument after the state before.
 *
 * @param action as "app/lead/acts.ts addNoteAct"
 * @param address a page that the action belongs to
 * @param origin the site whose page calls it
 */
export async function callAction(
  who: Who,
  action: string,
  address: string,
  form: Record<string, string>,
  origin = process.env.CANAL_AUDIT_URL ?? "",
): Promise<APIResponse> {
  const baseURL = process.env.CANAL_AUDIT_URL ?? "";
  const context = await request.newContext({ baseURL, storageState: stateOf(who) });
  // The form's fields stand before what refers to them, as the browser sends them.
  const sent = new FormData();
  for (const [name, value] of Object.entries(form)) sent.append(`_1_${name}`, value);
  sent.append("0", '[{},"$K1"]');
  return context.post(address, {
    maxRedirects: 0,
    headers: { "next-action": idOf(action), origin, accept: "text/x-component" },
    multipart: sent,
  });
}

function idOf(action: string): string {
  const file = join(projectFolder, ".next", "server", "server-reference-manifest.json");
  const { node } = manifest.parse(JSON.parse(readFileSync(file, "utf8")));
  const found = Object.entries(node).find(
    ([, one]) => `${one.filename} ${one.exportedName}` === action,
  );
  if (!found) throw new Error(`The build knows no action ${action}.`);
  return found[0];
}
