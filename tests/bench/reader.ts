import { execFile } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { writeDeliveries } from "./many-deliveries";

const run = promisify(execFile);
const ways = ["records", "mapped"] as const;
const rowsOfFile = 1_000_000;

/**
 * Ten million irrigation rows through the reader and the checks alone, once as record files and once by a mapping: a file of a
 * million rows, read so many times in one process.
 */
export async function reader(times = "10"): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-bench-"));
  try {
    const file = await writeDeliveries(folder, rowsOfFile);
    const table = [];
    for (const way of ways) {
      const { rows, good, seconds, peakMb } = await readOften(file, way, times);
      table.push({
        ...{ "read as": way, rows, good, seconds: seconds.toFixed(1) },
        ...{ "rows a second": Math.round(rows / seconds), "peak MB": Math.round(peakMb) },
      });
    }
    console.table(table);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

type ReaderRun = { rows: number; good: number; seconds: number; peakMb: number };

async function readOften(file: string, way: string, times: string): Promise<ReaderRun> {
  const tsx = join(process.cwd(), "node_modules/.bin/tsx");
  const script = ["--tsconfig", "lib/command/tsconfig.json", "tests/bench/read-often.ts"];
  const { stdout } = await run(tsx, [...script, file, way, times]);
  return JSON.parse(stdout);
}
