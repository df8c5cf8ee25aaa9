import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { generateClient } from "@/prisma/generate";
import { advisories } from "./advisories";
import { countBrowser, countVitest } from "./count-tests";
import { findChromium, NO_CHROMIUM } from "./find-chromium";
import { type Counts, node, runStep, type StepResult } from "./run-step";

/**
 * What `npm test` runs. `npm test -- style types` runs only those steps; after "unit" or "browser" further
 * words choose files, as in `npm test -- unit tests/store`. The last line is the sum over all tests.
 */
const STEPS = {
  client: () => generateClient().then(() => true),
  style: async () =>
    (await node([
      bin("@biomejs/biome/bin/biome"),
      "check",
      "--config-path=tests/style.json",
      ".",
    ])) === 0,
  types: async () =>
    (await node([bin("next/dist/bin/next"), "typegen"])) === 0 &&
    (await node([bin("typescript/bin/tsc"), "--noEmit"])) === 0,
  advisories,
  unit: runUnit,
  browser: runBrowser,
};
type Step = keyof typeof STEPS;

const words = process.argv.slice(2);
const chosen = words.filter((word): word is Step => word in STEPS);
const rest = words.filter((word) => !(word in STEPS));
const reports = await mkdtemp(join(tmpdir(), "canal-audit-reports-"));
const results: StepResult[] = [];
for (const step of Object.keys(STEPS) as Step[]) {
  if (step !== "client" && chosen.length > 0 && !chosen.includes(step)) continue;
  results.push(await runStep(step, STEPS[step]));
}
await rm(reports, { recursive: true, force: true });
const sum = (key: "passed" | "failed") => results.reduce((all, result) => all + result[key], 0);
// Said once more where a log is read from its end.
for (const failure of results.flatMap(({ failures }) => failures))
  console.log(`\nFAILED: ${failure}`);
console.log(`\n${sum("passed")} passed, ${sum("failed")} failed`);
process.exitCode = sum("failed") === 0 ? 0 : 1;

async function runUnit(): Promise<Counts> {
  const file = join(reports, "unit.json");
  const code = await node([
    ...[bin("vitest/vitest.mjs"), "run", "--config", "tests/vitest.config.ts"],
    ...["--reporter=default", "--reporter=json", `--outputFile.json=${file}`],
    ...rest,
  ]);
  return countVitest(file, code);
}

async function runBrowser(): Promise<Counts | boolean> {
  const chromium = findChromium();
  if (!chromium) {
    console.error(NO_CHROMIUM);
    return false;
  }
  const file = join(reports, "browser.json");
  const code = await node(
    [bin("@playwright/test/cli.js"), "test", "-c", "tests/browser/playwright.config.ts", ...rest],
    { CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  );
  return countBrowser(file, code);
}

function bin(path: string): string {
  return join("node_modules", path);
}
