import { expect, test } from "vitest";
import { allFaults } from "./all-faults";

// Expected values are the project's own property: after any fault the database holds what it held before the act or what the act comes
// to undisturbed, with figures computed from scratch. `npm run faults` tries the same at many more points.

const few = { kills: 2, lines: 1, disks: 1, limits: 1, twice: 0, clocks: 0 };

test("nothing accepted is lost and nothing half done is visible, whatever is killed, full, cut or stopped", async () => {
  const outcomes = await allFaults(
    { ...few, migrations: 1, first: false },
    12,
    Date.now() % 1_000_000,
  );
  expect(outcomes.length).toBe(8);
  expect(outcomes.filter(({ troubles }) => troubles.length > 0)).toEqual([]);
}, 300_000);
