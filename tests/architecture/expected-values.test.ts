import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

// The project's own rule: a test says where its expected values come from.
const origin =
  /computed|worked by hand|by hand|common practice|from memory|\bISO \d|RFC \d|IANA|published|source|project's own|propert/i;

test("every test file says where its expected values come from", () => {
  const files = readdirSync("tests", { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.(test|spec)\.ts$/.test(name),
  );
  expect(files.length).toBeGreaterThan(70);
  const silent = files.filter((name) => !origin.test(readFileSync(join("tests", name), "utf8")));
  expect(silent).toEqual([]);
});
