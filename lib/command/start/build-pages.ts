import { createHash } from "node:crypto";
import { readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { withLock } from "@/lib/store/home/lock";
import { projectFolder } from "@/lib/store/home/project-folder";
import { begun } from "./progress";
import { runChild } from "./run-child";

/** What the pages are built from; the command and the tests are not among it. */
const SOURCES = [
  ...["app", "lib", "prisma/schema.prisma", "next.config.ts", "proxy.ts"],
  ...["package.json", "package-lock.json", "tsconfig.json"],
];
const stamp = join(projectFolder, ".next", "made-from.txt");

/**
 * Builds the pages for production where their sources changed since the last build.
 * @returns what was done, in a few words.
 */
export async function buildPages(stop: AbortSignal): Promise<string> {
  if (await isFresh()) return "up to date";
  const lock = join(projectFolder, "node_modules", ".cache", "canal-audit", "build.lock");
  return withLock(lock, async () => {
    const source = await sourceHash();
    if (await isFresh(source)) return "up to date";
    begun("building the pages, which takes up to a minute");
    await rm(stamp, { force: true });
    const next = join(projectFolder, "node_modules", "next", "dist", "bin", "next");
    const { code, said } = await runChild([next, "build"], { NODE_ENV: "production" }, stop).over;
    if (stop.aborted) return "stopped";
    if (code !== 0 || !(await isWhole())) {
      throw new Error(`The pages could not be built:\n${said}`);
    }
    await writeFile(stamp, source);
    return "built";
  });
}

async function isFresh(source?: string): Promise<boolean> {
  const made = await readFile(stamp, "utf8").catch(() => null);
  if (made === null || made !== (source ?? (await sourceHash()))) return false;
  return isWhole();
}

/** Next writes this file last. */
async function isWhole(): Promise<boolean> {
  return (await stat(join(projectFolder, ".next", "BUILD_ID")).catch(() => null)) !== null;
}

async function sourceHash(): Promise<string> {
  const hash = createHash("sha256");
  for (const source of SOURCES) {
    for (const file of await filesOf(source)) {
      hash.update(`${file}\n`).update(await readFile(join(projectFolder, file)));
    }
  }
  return hash.digest("hex");
}

async function filesOf(path: string): Promise<string[]> {
  const found = await stat(join(projectFolder, path)).catch(() => null);
  if (!found) return [];
  if (!found.isDirectory()) return [path];
  const inside = await readdir(join(projectFolder, path), { recursive: true, withFileTypes: true });
  return inside
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(projectFolder.length + 1))
    .filter((file) => !file.startsWith(join("lib", "command")))
    .sort();
}
