import { execFile } from "node:child_process";
import { promisify } from "node:util";

const run = promisify(execFile);

/** What `quarter-once` prints: milliseconds, and how much there was. */
export type QuarterRun = {
  readonly figures: number;
  readonly clinicians: number;
  readonly canals: number;
  readonly afresh: number;
  readonly withOthers: number;
  readonly again: number;
  readonly trend: number;
  readonly statistics: number;
  readonly duck?: number;
};

/** Reads a quarter of a home in a process with the nursery that the process of the pages has. */
export async function quarterOnce(home: string, ...words: string[]): Promise<QuarterRun> {
  const node = ["--max-semi-space-size=64", "--import", "tsx"];
  const { stdout } = await run(
    process.execPath,
    [...node, "tests/bench/scale/quarter-once.ts", ...words],
    {
      env: {
        ...process.env,
        CANAL_AUDIT_HOME: home,
        TSX_TSCONFIG_PATH: "lib/command/tsconfig.json",
      },
    },
  );
  return JSON.parse(stdout);
}
