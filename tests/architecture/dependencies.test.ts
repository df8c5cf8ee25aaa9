import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { z } from "zod";

// Expected values are the project's own rule: what is installed is what was tried, byte for byte.

const versions = z.record(z.string(), z.string());
const project = z
  .object({ dependencies: versions, devDependencies: versions })
  .parse(JSON.parse(readFileSync("package.json", "utf8")));
const locked = z
  .object({
    packages: z.record(
      z.string(),
      z.object({
        version: z.string().optional(),
        resolved: z.string().optional(),
        integrity: z.string().optional(),
        link: z.boolean().optional(),
      }),
    ),
  })
  .parse(JSON.parse(readFileSync("package-lock.json", "utf8"))).packages;
const wanted = Object.entries({ ...project.dependencies, ...project.devDependencies });

test("every dependency is pinned to one version, and the lock file has that one", () => {
  const loose = wanted.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.-]+)?$/.test(version));
  expect(loose).toEqual([]);
  const other = wanted.filter(
    ([name, version]) => locked[`node_modules/${name}`]?.version !== version,
  );
  expect(other).toEqual([]);
});

test("every package of the lock file has its checksum", () => {
  const packages = Object.entries(locked).filter(([path]) => path !== "");
  expect(packages.length).toBeGreaterThan(wanted.length);
  // What comes inside another package is covered by that one's.
  const bare = packages.filter(
    ([, one]) => one.resolved && !one.link && !one.integrity?.startsWith("sha512-"),
  );
  expect(bare).toEqual([]);
});
