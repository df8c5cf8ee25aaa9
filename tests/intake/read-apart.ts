import { basename } from "node:path";
import { readBothWays } from "./read-both-ways";

/** Reads the files named, in a process of its own whose memory may be kept small, and prints what came of each. */
const came: Record<string, unknown> = {};
for (const path of process.argv.slice(2)) {
  const started = performance.now();
  const both = await readBothWays(path, basename(path));
  came[basename(path)] = { ...both, seconds: (performance.now() - started) / 1000 };
}
console.log(JSON.stringify(came));
