import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { withLock } from "@/lib/store/home/lock";
import { projectFolder } from "@/lib/store/home/project-folder";

const client = join(projectFolder, "prisma", "client");
const stamp = join(client, "made-from.txt");

/**
 * Makes the database client of prisma/client anew where the schema or Prisma's version changed.
 * @returns whether it had to be made.
 */
export async function generateClient(): Promise<boolean> {
  if (await isFresh()) return false;
  const lock = join(projectFolder, "node_modules", ".cache", "canal-audit", "generate.lock");
  return withLock(lock, async () => {
    if (await isFresh()) return false;
    await runPrisma();
    await writeFile(stamp, await source());
    return true;
  });
}

async function isFresh(): Promise<boolean> {
  const made = await readFile(stamp, "utf8").catch(() => null);
  return (
    made === (await source()) && (await stat(join(client, "client.ts")).catch(() => null)) !== null
  );
}

async function source(): Promise<string> {
  const hash = createHash("sha256");
  for (const file of ["prisma/schema.prisma", "node_modules/@prisma/client/package.json"]) {
    hash.update(await readFile(join(projectFolder, file)));
  }
  return hash.digest("hex");
}

function runPrisma(): Promise<void> {
  const prisma = join(projectFolder, "node_modules", "prisma", "build", "index.js");
  const words = [prisma, "generate", "--config", "prisma/prisma.config.ts", "--no-hints"];
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, words, {
      cwd: projectFolder,
      // Generating needs no engine, but Prisma fetches one unless it is told where one is: any file will do.
      env: {
        ...process.env,
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        CHECKPOINT_DISABLE: "1",
        PRISMA_HIDE_UPDATE_MESSAGE: "1",
      },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let said = "";
    child.stdout.on("data", (text) => (said += text));
    child.stderr.on("data", (text) => (said += text));
    child.once("error", reject);
    child.once("exit", (code) =>
      code === 0 ? resolve() : reject(new Error(`prisma generate failed:\n${said}`)),
    );
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  console.log((await generateClient()) ? "The client is made." : "The client is up to date.");
}
