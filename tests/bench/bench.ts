import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { demoAccount } from "../browser/demo-account";
import runApp from "../browser/running-app";
import { importMemory } from "./import-memory";
import { pageSpeed } from "./page-speed";

/**
 * Measures what is promised of speed and memory and prints it as tables; ratios are of one run.
 *   npm run bench                    import memory, then the pages on the demo
 *   npm run bench -- pages           the pages alone
 *   npm run bench -- pages FOLDER    the pages alone, on the records of a folder instead of the demo
 */
const [only, folder] = process.argv.slice(2);
if (only !== "pages") await benchImport();
await benchPages(folder);

async function benchImport(): Promise<void> {
  const [small, large] = await importMemory([100_000, 1_000_000]);
  if (!small || !large) throw new Error("a run is missing");
  console.table(
    [small, large].map((run) => ({
      rows: run.rows,
      seconds: run.seconds.toFixed(1),
      "rows a second": Math.round(run.rows / run.seconds),
      "peak MB": Math.round(run.peakMb),
    })),
  );
  const ratio = (large.peakMb / small.peakMb).toFixed(2);
  console.log(
    `Peak memory of 1,000,000 rows against 100,000: ${ratio} times (promised: at most 1.3)`,
  );
}

async function benchPages(records: string | undefined): Promise<void> {
  if (records) process.env.CANAL_AUDIT_DEMO = "no";
  const takeDown = await runApp();
  try {
    const url = process.env.CANAL_AUDIT_URL ?? "";
    if (records) console.log(command("import", records, "--zone", "Europe/London"));
    const query = "?period=2026-Q2";
    const pages: [role: string, pages: string[]][] = [
      ["clinical-lead", [`/lead${query}`, `/lead/measures/volume${query}`]],
      ["quality-officer", [`/quality${query}`]],
    ];
    const runs = [];
    for (const [role, some] of pages) {
      const account = records ? newAccount(role) : demoAccount(role);
      runs.push(...(await pageSpeed(url, account, some, 50)));
    }
    console.table(runs);
    console.log(
      "Milliseconds of 50 answers each, one after the other (promised for the quarter page: p95 under 300)",
    );
  } finally {
    await takeDown();
  }
}

function newAccount(role: string): { email: string; password: string } {
  const account = { email: `${role}@bench.example`, password: "only-for-the-bench" };
  const words = ["--role", role, "--name", role, "--email", account.email];
  command("people", "add", ...words, "--password", account.password);
  return account;
}

/** Runs the command on the home of the application under test; its first lines. */
function command(...words: string[]): string {
  const tsx = join(process.cwd(), "node_modules/.bin/tsx");
  const start = ["--tsconfig", "lib/command/tsconfig.json", "lib/command/canal-audit.ts"];
  const said = execFileSync(tsx, [...start, ...words], { encoding: "utf8" });
  return said.split("\n").slice(0, 10).join("\n");
}
