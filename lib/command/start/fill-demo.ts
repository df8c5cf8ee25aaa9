import { rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import pg from "pg";
import type { Home } from "@/lib/store/home/open-home";
import { projectFolder } from "@/lib/store/home/project-folder";
import { begun } from "./progress";
import { runChild } from "./run-child";

/**
 * Fills a home that holds neither visits nor people with the demo scenario; CANAL_AUDIT_DEMO=no leaves it
 * empty. A filling that was cut short is done again the next time: the seed may be run twice.
 * @param env as the pages have it.
 * @returns what was done, in a few words.
 */
export async function fillDemo(
  home: Home,
  env: Record<string, string>,
  stop: AbortSignal,
): Promise<string> {
  const seed = join(projectFolder, "seed", "demo.ts");
  const unfinished = join(home.folder, "demo-unfinished");
  const cutShort = await exists(unfinished);
  if (!cutShort && !(await isEmpty(home.url))) return "kept as they are";
  if (process.env.CANAL_AUDIT_DEMO === "no") return "none, as asked";
  if (!(await exists(seed))) return "none: no demo is here";
  begun("importing the demo's records");
  await writeFile(unfinished, "");
  const { code, said } = await runChild(
    ["--import", "tsx", seed],
    { ...env, TSX_TSCONFIG_PATH: join(projectFolder, "lib", "command", "tsconfig.json") },
    stop,
  ).over;
  if (stop.aborted) return "stopped";
  if (code !== 0) throw new Error(`The demo could not be imported:\n${said}`);
  await rm(unfinished, { force: true });
  return "demo imported";
}

async function isEmpty(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const found = await client.query(
      "select not exists (select from sessions) and not exists (select from users) as empty",
    );
    return found.rows[0].empty;
  } finally {
    await client.end();
  }
}

async function exists(path: string): Promise<boolean> {
  return (await stat(path).catch(() => null)) !== null;
}
