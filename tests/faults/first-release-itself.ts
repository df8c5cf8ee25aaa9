import { execFileSync } from "node:child_process";
import { mkdir, rm, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { holderReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { disconnect } from "@/lib/store/database";
import { migrate } from "@/lib/store/home/migrate";
import { migrationFiles } from "@/lib/store/home/migration-files";
import { projectFolder } from "@/lib/store/home/project-folder";
import { key } from "./acts";
import { firstSections } from "./first-release";
import type { Ground, Outcome } from "./ground";
import { asked } from "./own-server";
import { recordFiles } from "./record-files";
import { referenceOf, soundness } from "./sound";

const what = "upgrade of what the first release's own code brought in";
const zone = "Europe/London";

/**
 * A database that the first release's own code made and filled, brought up to date: its records, counts and figures are those of the same
 * files brought in today. The code is that of the commit which brought the first migration; without the history there is none.
 */
export async function upgradedFromItself(on: Ground): Promise<Outcome> {
  const commit = await firstCommit();
  if (!commit) return { what, points: 0, came: ["without the history not tried"], troubles: [] };
  const folder = join(on.server.folder, "first-release");
  const files = join(on.server.folder, "first-files");
  const sources = [
    ...(await recordFiles(files, "one", 60, true)),
    ...(await recordFiles(files, "two", 60)),
  ].sort((one, other) => (one.name < other.name ? -1 : 1));
  const [then, now] = [await on.server.database(), await on.server.database()];
  try {
    await unpacked(commit, folder);
    runFirst(folder, then.url, files);
    const applied = await migrate(then.url);
    await migrate(now.url);
    await disconnect();
    process.env.DATABASE_URL = now.url;
    const how = { zone, key, heldListed: 0 };
    await importRecords(holderReach().records, sources, how);
    const reference = await referenceOf(now.url, "brought in today");
    const found = await soundness(then.url, [reference], { sections: firstSections });
    const held = await Promise.all([heldIn(then.url), heldIn(now.url)]);
    const troubles = held[0] === held[1] ? found.troubles : [...found.troubles, "held rows differ"];
    return { what, points: 1, came: [`with ${applied.length} migrations`], troubles };
  } finally {
    await disconnect();
    await then.drop();
    await now.drop();
    await rm(folder, { recursive: true, force: true });
  }
}

async function firstCommit(): Promise<string | null> {
  const [first] = await migrationFiles();
  const file = `prisma/migrations/${first?.name}/migration.sql`;
  const said = git(["log", "--format=%H", "--diff-filter=A", "--", file]);
  return said?.toString().trim().split("\n").at(-1) || null;
}

/** Its files, with today's packages: those it needs have the same versions. */
async function unpacked(commit: string, folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  const archive = join(folder, "release.tar");
  await writeFile(archive, git(["archive", commit]) ?? "");
  execFileSync("tar", ["-xf", archive, "-C", folder]);
  await symlink(join(projectFolder, "node_modules"), join(folder, "node_modules"));
}

function runFirst(folder: string, url: string, files: string): void {
  const tsx = ["--import", "tsx"];
  const env = {
    ...process.env,
    TSX_TSCONFIG_PATH: join(folder, "lib/command/tsconfig.json"),
    CANAL_AUDIT_HOME: join(folder, "home"),
    CANAL_AUDIT_PATIENT_KEY: key.toString("hex"),
    DATABASE_URL: url,
  };
  const run = (words: string[]) =>
    execFileSync(process.execPath, [...tsx, ...words], { cwd: folder, env, stdio: "pipe" });
  run(["prisma/generate.ts"]);
  run(["lib/command/canal-audit.ts", "import", files, "--zone", zone]);
}

async function heldIn(url: string): Promise<string> {
  const rows = await asked(
    url,
    "select coalesce(md5(string_agg(concat_ws(' ', table_name, kind, session_id, raw), ',' order by table_name, session_id, raw::text)), '') || count(*) as held from held",
  );
  return String(rows[0]?.held);
}

function git(words: string[]): Buffer | null {
  try {
    return execFileSync("git", words, { cwd: projectFolder, stdio: "pipe", maxBuffer: 2 ** 28 });
  } catch {
    return null;
  }
}
