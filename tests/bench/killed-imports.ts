import { type ChildProcess, execFile, spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { seededRandom } from "@/lib/statistics/seeded-random";

const run = promisify(execFile);
const tsx = join(process.cwd(), "node_modules/.bin/tsx");
const command = ["--tsconfig", "lib/command/tsconfig.json", "lib/command/canal-audit.ts"];

/**
 * Kills (SIGKILL) the process of an import of a folder of records at random moments, restarts it and goes on; after each
 * round compares every file's counts, what is held and the figures of one quarter, each in turn, with those of an import that nobody killed.
 *
 * @param times how many kills; the moments are spread over the time that a whole import takes
 */
export async function killedImports(folder?: string, times = "50", seed = "1"): Promise<void> {
  if (!folder) throw new Error("name a folder of records");
  const records = resolve(process.env.INIT_CWD ?? ".", folder);
  const random = seededRandom(Number(seed));
  const base = await mkdtemp(join(tmpdir(), "canal-audit-killed-"));
  try {
    const whole = await brought(join(base, "whole"), records);
    const quarters = await figuresOf(join(base, "whole"));
    console.log(`Quarters with figures: ${quarters.map(({ quarter }) => quarter).join(", ")}.`);
    const span = whole.took;
    console.log(`A whole import takes ${(span / 1000).toFixed(1)} s.`);
    let same = 0;
    let ended = 0;
    for (let round = 1; round <= Number(times); round += 1) {
      const home = join(base, `home-${round}`);
      const after = Math.round(random() * span);
      if (!(await killed(home, records, after))) ended += 1;
      const again = await brought(home, records);
      const asked = quarters[round % quarters.length];
      if (!asked) throw new Error("the folder holds no quarter's records");
      const figures = await figuresIn(home, asked.quarter);
      const alike = figures === asked.figures && repeatedOrSame(again.counts, whole.counts);
      if (alike) same += 1;
      console.log(
        `${round}: killed after ${(after / 1000).toFixed(1)} s; afterwards counts and ${asked.quarter} ${alike ? "as if it had not happened" : "DIFFERENT"}`,
      );
      await rm(home, { recursive: true, force: true });
    }
    console.log(
      `${same} of ${times} the same; ${ended} of the imports had ended before they were to be killed.`,
    );
    if (same !== Number(times)) process.exitCode = 1;
  } finally {
    await rm(base, { recursive: true, force: true });
  }
}

type FileCounts = { name: string; table: string } & Record<string, number | string>;

/** Imports the folder; answers the counts of its files and how long it took, in ms. */
async function brought(home: string, records: string) {
  const started = performance.now();
  const done = JSON.parse(
    await audit(home, ["import", records, "--zone", "Europe/London", "--json"]),
  );
  return { counts: done.files as FileCounts[], took: performance.now() - started };
}

/** The quarters with records, and all figures of each as text. */
async function figuresOf(home: string): Promise<{ quarter: string; figures: string }[]> {
  const found = [];
  for (const year of [2025, 2026])
    for (const quarter of [1, 2, 3, 4].map((one) => `${year}-Q${one}`)) {
      const figures = await figuresIn(home, quarter);
      if (/"population": ?[1-9]/.test(figures)) found.push({ quarter, figures });
    }
  return found;
}

function figuresIn(home: string, quarter: string): Promise<string> {
  return audit(home, ["figures", "--period", quarter, "--json"]);
}

/** An import killed after it was done is repeated by the next: then every accepted row is repeated. */
function repeatedOrSame(again: readonly FileCounts[], whole: readonly FileCounts[]): boolean {
  const sums = (files: readonly FileCounts[]) =>
    JSON.stringify(
      files.map((file) => [
        file.table,
        file.read,
        Number(file.accepted) + Number(file.repeated),
        file.held,
      ]),
    );
  return sums(again) === sums(whole);
}

/** Begins an import and kills its process and every process it began. Answers whether it still ran then. */
async function killed(home: string, records: string, after: number): Promise<boolean> {
  const child = spawn(tsx, [...command, "import", records, "--zone", "Europe/London"], {
    env: { ...process.env, CANAL_AUDIT_HOME: home, DATABASE_URL: "" },
    stdio: "ignore",
    detached: true,
  });
  const ended = new Promise<boolean>((resolve) => child.once("exit", () => resolve(false)));
  const late = new Promise<boolean>((resolve) => setTimeout(() => resolve(true), after));
  const running = await Promise.race([ended, late]);
  if (running) {
    killGroup(child);
    await ended;
  }
  return running;
}

function killGroup(child: ChildProcess): void {
  if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
}

async function audit(home: string, words: readonly string[]): Promise<string> {
  const { stdout } = await run(tsx, [...command, ...words], {
    env: { ...process.env, CANAL_AUDIT_HOME: home, DATABASE_URL: "" },
    maxBuffer: 1 << 30,
  });
  return stdout;
}
