import { spawn } from "node:child_process";
import { projectFolder } from "@/lib/store/home/project-folder";

/** How one step of the tests went. */
export interface StepResult {
  name: string;
  seconds: number;
  passed: number;
  failed: number;
  /** What failed, with the beginning of why. */
  failures: readonly string[];
}

/** Counts of a step's tests, where it has any. */
export type Counts = Omit<StepResult, "name" | "seconds">;

/**
 * Runs one step, prints its seconds, and counts: a step that fails without a failed test of its own
 * (style, types, a file that does not load) is one failure, so that nothing fails unseen.
 */
export async function runStep(
  name: string,
  work: () => Promise<Counts | boolean>,
): Promise<StepResult> {
  const from = performance.now();
  console.log(`\n── ${name}`);
  const found = await work().catch((error) => {
    console.error(error);
    return false;
  });
  const seconds = (performance.now() - from) / 1000;
  const nothing = { passed: 0, failed: found ? 0 : 1, failures: found ? [] : [name] };
  const counts = typeof found === "boolean" ? nothing : found;
  const verdict = counts.failed > 0 ? "FAILED" : "passed";
  console.log(`── ${name} ${verdict} in ${seconds.toFixed(1)} s`);
  return { name, seconds, ...counts };
}

/** Runs Node on these words in the project's folder, its output going to ours; answers its exit code. */
export function node(words: string[], env: Record<string, string> = {}): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, words, {
      cwd: projectFolder,
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
      stdio: ["ignore", "inherit", "inherit"],
    });
    child.once("error", reject);
    child.once("exit", (code) => resolve(code ?? 1));
  });
}
