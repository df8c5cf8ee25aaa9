import { execFile } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { writeDeliveries, writeVisits } from "./many-deliveries";

const run = promisify(execFile);

export type ImportRun = { rows: number; seconds: number; keepSeconds: number; peakMb: number };

/** Imports an irrigation file of each size, its visits and canals loaded first, each in a home and a process of its own. */
export async function importMemory(sizes: readonly number[]): Promise<ImportRun[]> {
  const runs: ImportRun[] = [];
  for (const size of sizes) {
    const folder = await mkdtemp(join(tmpdir(), "canal-audit-bench-"));
    try {
      await importOnce(folder, await writeVisits(folder, size));
      runs.push(await importOnce(folder, [await writeDeliveries(folder, size)]));
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }
  return runs;
}

export async function importOnce(folder: string, files: readonly string[]): Promise<ImportRun> {
  const tsx = join(process.cwd(), "node_modules/.bin/tsx");
  const { stdout } = await run(
    tsx,
    // As the command runs: rows are made and forgotten by the million, and a heap that grows at ease would keep them.
    [
      "--heap-growing-percent=30",
      ...["--tsconfig", "lib/command/tsconfig.json", "tests/bench/import-once.ts", ...files],
    ],
    {
      env: { ...process.env, CANAL_AUDIT_HOME: join(folder, "home"), DATABASE_URL: "" },
    },
  );
  return JSON.parse(stdout);
}
