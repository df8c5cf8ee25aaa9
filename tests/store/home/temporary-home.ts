import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Home, openHome } from "@/lib/store/home/open-home";

/** A folder for a home of a test's own. */
export async function temporaryFolder(): Promise<{ folder: string; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-home-"));
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** Opens the home in this folder as a process would that has no other database. */
export async function openIn(folder: string): Promise<Home> {
  process.env.CANAL_AUDIT_HOME = folder;
  delete process.env.DATABASE_URL;
  return openHome();
}
