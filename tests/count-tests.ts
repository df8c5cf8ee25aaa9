import { readFile } from "node:fs/promises";
import { z } from "zod";
import type { Counts } from "./run-step";

const vitestReport = z.object({
  success: z.boolean(),
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      message: z.string(),
      assertionResults: z.array(
        z.object({
          status: z.string(),
          fullName: z.string(),
          failureMessages: z.array(z.string()).nullish(),
        }),
      ),
    }),
  ),
});

type Suite = {
  specs: {
    title: string;
    file: string;
    ok: boolean;
    tests: { results: { error?: Trouble }[] }[];
  }[];
  suites?: Suite[];
};
type Trouble = { message?: string };

const suite: z.ZodType<Suite> = z.lazy(() =>
  z.object({
    specs: z.array(
      z.object({
        title: z.string(),
        file: z.string(),
        ok: z.boolean(),
        tests: z.array(
          z.object({
            results: z.array(
              z.object({ error: z.object({ message: z.string().optional() }).optional() }),
            ),
          }),
        ),
      }),
    ),
    suites: z.array(suite).optional(),
  }),
);

const browserReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number() }),
  suites: z.array(suite),
});

/** Counts from vitest's JSON report; a run that failed without a failed test counts as one. */
export async function countVitest(file: string, code: number): Promise<Counts> {
  const report = vitestReport.parse(JSON.parse(await readFile(file, "utf8")));
  const failures = report.testResults.flatMap(({ name, status, message, assertionResults }) => {
    const failed = assertionResults.filter((test) => test.status === "failed");
    if (failed.length === 0) return status === "failed" ? [inShort(name, message)] : [];
    return failed.map((test) =>
      inShort(`${name} › ${test.fullName}`, test.failureMessages?.join("\n")),
    );
  });
  const success = code === 0 && report.success;
  return counts(report.numPassedTests, report.numFailedTests, success, failures);
}

/** Counts from Playwright's JSON report; a test that passed only when repeated counts as failed. */
export async function countBrowser(file: string, code: number): Promise<Counts> {
  const { stats, suites } = browserReport.parse(JSON.parse(await readFile(file, "utf8")));
  const failures = suites.flatMap(failuresOf);
  return counts(stats.expected, stats.unexpected + stats.flaky, code === 0, failures);
}

function failuresOf({ specs, suites }: Suite): string[] {
  const own = specs.flatMap(({ title, file, ok, tests }) => {
    const troubles = tests.flatMap(({ results }) => results.flatMap(({ error }) => error ?? []));
    if (ok && troubles.length === 0) return [];
    return [inShort(`${file} › ${title}`, troubles.map(({ message }) => message).join("\n"))];
  });
  return [...own, ...(suites ?? []).flatMap(failuresOf)];
}

/** What failed and the beginning of why. */
function inShort(name: string, why = ""): string {
  const lines = why.split("\n").filter((line) => line.trim() !== "");
  return [name, ...lines.slice(0, linesOfWhy)].join("\n    ");
}

const linesOfWhy = 12;

function counts(
  passed: number,
  failed: number,
  success: boolean,
  failures: readonly string[],
): Counts {
  return { passed, failed: failed === 0 && !success ? 1 : failed, failures };
}
