import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "@/lib/store/home/project-folder";

// Expected values are the project's own rule (DEVELOPERS.md, "The second wall"): Prisma asks for all that `findUnique` wants at one moment in a
// single query, and so as one of those who wanted it.

test("no query is put together with another's", () => {
  const files = readdirSync(join(projectFolder, "lib"), { recursive: true, encoding: "utf8" });
  const sources = files.filter((file) => file.endsWith(".ts"));
  expect(sources.length).toBeGreaterThan(500);
  const asking = sources.filter((file) =>
    /\bfindUnique/.test(readFileSync(join(projectFolder, "lib", file), "utf8")),
  );
  expect(asking).toEqual([]);
});
