import { leaveOnSignal } from "@/lib/command/start/leave-on-signal";
import { allFaults } from "./all-faults";

/** One part of the faults in a process of its own: its order comes as a word of JSON; outcomes go to the parent as they are. */
leaveOnSignal();
const { points, visits, seed, part } = JSON.parse(process.argv[2] ?? "{}");
const outcomes = await allFaults(
  points,
  visits,
  seed,
  (line) => process.stderr.write(`${line}\n`),
  part,
);
process.send?.(outcomes, () => process.disconnect());
