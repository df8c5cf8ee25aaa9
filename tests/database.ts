import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { type Home, openHome } from "@/lib/store/home/open-home";
import { execute } from "@/lib/store/home/scratch-database";

declare module "vitest" {
  interface ProvidedContext {
    /** A server on which a test may make databases: see tests/fresh-database.ts. */
    databaseUrl: string;
    /** The same as the role as which requests are asked. */
    viewersUrl: string;
  }
}

let home: Home | undefined;
let folder = "";

/** One PostgreSQL for the whole run, in a home of its own; DATABASE_URL gives another one instead. */
export async function setup(project: TestProject): Promise<void> {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-test-"));
  process.env.CANAL_AUDIT_HOME = folder;
  home = await openHome();
  if (home.keeperUrl) {
    await execute(home.keeperUrl, "alter role canal_audit createdb");
    // What a test writes need not survive a power cut.
    await execute(home.keeperUrl, "alter system set fsync = off");
    await execute(home.keeperUrl, "select pg_reload_conf()");
  }
  process.env.DATABASE_URL = home.url;
  project.provide("databaseUrl", home.url);
  project.provide("viewersUrl", home.viewersUrl);
}

export async function teardown(): Promise<void> {
  await home?.close();
  await rm(folder, { recursive: true, force: true });
}
