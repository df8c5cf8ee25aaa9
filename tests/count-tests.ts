import { readFile } from "node:fs/promises";
import { z } from "zod";
import type { Counts } from "./run-step";

const vitestReport = z.object({
  success: z.boolean(),
  numPassedTests: z.number(),
  numFailedTests: z.number(),
});

const browserReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number() }),
});

/** Counts from vitest's JSON report; a run that failed without a failed test counts as one. */
export async function countVitest(file: string, code: number): Promise<Counts> {
  const report = vitestReport.parse(JSON.parse(await readFile(file, "utf8")));
  return counts(report.numPassedTests, report.numFailedTests, code === 0 && report.success);
}

/** Counts from Playwright's JSON report; a test that passed only when repeated counts as failed. */
export async function countBrowser(file: string, code: number): Promise<Counts> {
  const { stats } = browserReport.parse(JSON.parse(await readFile(file, "utf8")));
  return counts(stats.expected, stats.unexpected + stats.flaky, code === 0);
}

function counts(passed: number, failed: number, success: boolean): Counts {
  return { passed, failed: failed === 0 && !success ? 1 : failed };
}
