import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bareCopy } from "./bare-copy";
import { madeHome } from "./made-home";
import { quarterOnce } from "./quarter-of-home";

// Expected values are by the project's own rule: what the bench measures on a million canals it measures on a few, how long it takes apart.

let folder: string;
const names = ["CANAL_AUDIT_HOME", "DATABASE_URL"] as const;
const before = names.map((name) => process.env[name]);
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-quick-"));
  // A home of its own, on a server of its own.
  delete process.env.DATABASE_URL;
});
afterAll(async () => {
  for (const [place, name] of names.entries())
    if (before[place] === undefined) delete process.env[name];
    else process.env[name] = before[place];
  await rm(folder, { recursive: true, force: true });
});

test("the bench brings records in, copies them and reads a quarter, and says so of each in numbers", async () => {
  const { home, canals, imported } = await madeHome(folder, 3000);
  expect(canals).toBeGreaterThan(0);
  const { rows, seconds } = await bareCopy(home);
  expect(rows).toBe(imported.rows);
  const quarter = await quarterOnce(home, "--duck");
  const measured = { ...imported, seconds, ...quarter };
  for (const [name, value] of Object.entries(measured))
    expect([name, Number.isFinite(value) && value >= 0]).toEqual([name, true]);
  expect(quarter.figures).toBeGreaterThan(0);
  expect(quarter.canals).toBeGreaterThan(0);
}, 300_000);
