import { spawn } from "node:child_process";

/** "stuck": did not end in the time allowed, which no green run needs. */
export type Outcome = "green" | "red" | "stuck";

const ALLOWED = 45_000;

/**
 * Runs vitest in a folder up to the first failure, in a process group of its own.
 * @param files source files; only the tests that rest on them run. None: all tests
 */
export function runTests(folder: string, files: readonly string[]): Promise<Outcome> {
  const which = files.length === 0 ? ["run"] : ["related", "--run", ...files];
  const quiet = ["--bail=1", "--reporter=dot", "--no-isolate", "--pool=threads", "--maxWorkers=1"];
  const child = spawn(
    process.execPath,
    ["node_modules/vitest/vitest.mjs", ...which, ...quiet, "--config=vitest.config.mjs"],
    { cwd: folder, detached: true, stdio: "ignore" },
  );
  return new Promise((resolve, reject) => {
    let stuck = false;
    const clock = setTimeout(() => {
      stuck = true;
      // The whole group, and none but it: the process started here leads it.
      if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
    }, ALLOWED);
    child.once("error", reject);
    child.once("exit", (code) => {
      clearTimeout(clock);
      resolve(stuck ? "stuck" : code === 0 ? "green" : "red");
    });
  });
}
