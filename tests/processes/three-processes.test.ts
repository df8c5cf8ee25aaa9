import { expect, test } from "vitest";
import { threeProcesses } from "./three-processes";

// Expected values are the project's own property: with several processes on one database, one of them may be killed at any moment and
// nobody sees more of it than a line lost. `npm run faults` tries it for longer.

test("of three app processes under load one is killed, and nothing is lost or wrong", async () => {
  const { troubles } = await threeProcesses(300, 1);
  expect(troubles).toEqual([]);
}, 900_000);
