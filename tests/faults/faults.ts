import { availableParallelism } from "node:os";
import { leaveOnSignal } from "@/lib/command/start/leave-on-signal";
import { generateClient } from "@/prisma/generate";

/**
 * What `npm run faults` runs: kills, a full disk, lost connections, imports at once, clocks and migrations, and after each the same
 * check (tests/faults/sound).
 *   npm run faults                 200 kills at random points, and of the others in proportion
 *   npm run faults -- 20 [SEED]    so many kills
 * Prints one table (what, how many points, what came of it) and the same as JSON; the exit code is 1 where anything was wrong.
 */
const [kills = "200", seed = "1"] = process.argv.slice(2);
if (!/^\d+$/.test(kills)) throw new Error(`"${kills}" is no number of points`);
leaveOnSignal();
await generateClient();
const { pointsOf } = await import("./all-faults");
const { inParts } = await import("./in-parts");
const { threeProcesses } = await import("../processes/three-processes");
const { counted } = await import("./ground");
const from = performance.now();
const parts = Math.min(2, availableParallelism());
const outcomes = [
  ...(await inParts(parts, pointsOf(Number(kills)), 100, Number(seed))),
  await threeProcesses(600, 10),
];
const rows = outcomes.map(({ what, points, came, troubles }) => [
  what,
  String(points),
  troubles.length === 0
    ? `sound: ${counted(came)}`
    : `WRONG: ${counted(came)}; ${[...new Set(troubles)].join("; ")}`,
]);
const width = (place: number) => Math.max(...rows.map((row) => row[place]?.length ?? 0));
for (const [what = "", points = "", came = ""] of [["what", "points", "what came of it"], ...rows])
  console.log(`${what.padEnd(width(0))}  ${points.padStart(6)}  ${came}`);
const seconds = Math.round((performance.now() - from) / 1000);
console.log(
  "Not tried: a power cut. Processes are killed, the machine goes on, and these servers run with fsync off.",
);
const points = outcomes.reduce((sum, outcome) => sum + outcome.points, 0);
console.log(`${points} points in ${seconds} s\n`);
const told = outcomes.map((outcome) => ({ ...outcome, came: counted(outcome.came) }));
console.log(JSON.stringify({ points, seconds, seed: Number(seed), outcomes: told }));
process.exitCode = outcomes.every(({ troubles }) => troubles.length === 0) ? 0 : 1;
