import { readdirSync } from "node:fs";
import { join } from "node:path";
import { cruise, type ICruiseResult, type IForbiddenRuleType } from "dependency-cruiser";
import extractTSConfig from "dependency-cruiser/config-utl/extract-ts-config";
import { expect, test } from "vitest";
import { projectFolder } from "@/lib/store/home/project-folder";

/**
 * Who may import whom; a folder may always import itself. The design's table, and the two places where the
 * start stands below the reports: no one asks for figures before there is a database.
 */
const MAY_IMPORT: Record<string, string[]> = {
  "lib/records": [],
  "lib/statistics": [],
  "lib/protocol": ["lib/records"],
  "lib/intake": ["lib/records"],
  "lib/access": ["lib/records"],
  "lib/measures": ["lib/records", "lib/protocol"],
  "lib/audit": ["lib/records", "lib/statistics", "lib/protocol", "lib/measures"],
  "lib/store": ["lib/records", "lib/access", "lib/protocol", "lib/measures", "prisma/client"],
  "lib/views": ["lib/records", "lib/protocol", "lib/measures", "lib/audit"],
  "lib/reports": [
    ...["lib/records", "lib/protocol", "lib/intake", "lib/access", "lib/measures", "lib/audit"],
    ...["lib/store", "lib/views"],
  ],
  "lib/command/start": ["lib/store/home", "prisma/generate.ts"],
  "lib/command": ["lib/reports", "lib/views", "lib/access", "lib/command/start"],
  "app/_charts": ["lib/views", "app/_parts/link.tsx"],
  app: ["lib/reports", "lib/views", "lib/access", "app/_charts"],
  prisma: ["lib/store/home"],
  seed: ["lib/records", "lib/reports"],
};
const FOLDERS = ["app", "lib", "prisma", "seed"];

const rules: IForbiddenRuleType[] = [
  ...Object.entries(MAY_IMPORT).map(([folder, allowed]) => ({
    name: `${folder} imports only what it may`,
    severity: "error" as const,
    from: { path: `^${folder}/`, pathNot: within(folder) },
    to: { path: "^(app|lib|prisma|seed|tests)/", pathNot: [folder, ...allowed].map(under) },
  })),
  {
    name: "no cycles",
    severity: "error",
    from: { pathNot: "^prisma/client/" },
    to: { circular: true },
  },
  {
    name: "nothing that cannot be found",
    severity: "error",
    from: { pathNot: "^prisma/client/" },
    to: { couldNotResolve: true },
  },
];

test("every import goes in an allowed direction, none in a circle", async () => {
  const result = await cruise(
    FOLDERS,
    {
      baseDir: projectFolder,
      ruleSet: { forbidden: rules },
      validate: true,
      tsConfig: { fileName: join(projectFolder, "tsconfig.json") },
      doNotFollow: { path: "node_modules" },
      exclude: { path: "^prisma/client/internal/" },
      tsPreCompilationDeps: true,
      enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "types"] },
    },
    undefined,
    { tsConfig: extractTSConfig(join(projectFolder, "tsconfig.json")) },
  );
  const { modules, summary } = result.output as ICruiseResult;
  const told = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
  expect(told).toEqual([]);

  // A reader that understands no TypeScript finds no fault either: it must have read every file.
  const read = new Set(modules.map((module) => module.source));
  const missed = filesOnDisk().filter((file) => !read.has(file));
  expect(missed).toEqual([]);
  const aliased = modules.flatMap((module) =>
    module.dependencies.filter((to) => to.module.startsWith("@/") && !to.couldNotResolve),
  );
  expect(aliased.length).toBeGreaterThan(0);
});

function under(path: string): string {
  return /\.tsx?$/.test(path) ? `^${path.replace(".", "\\.")}$` : `^${path}/`;
}

/** Folders inside this one that have a line of their own in the table. */
function within(folder: string): string[] {
  return Object.keys(MAY_IMPORT)
    .filter((other) => other.startsWith(`${folder}/`))
    .map(under);
}

function filesOnDisk(): string[] {
  return FOLDERS.flatMap((folder) =>
    readdirSync(join(projectFolder, folder), { recursive: true, encoding: "utf8" }).map((file) =>
      join(folder, file),
    ),
  ).filter((file) => /\.tsx?$/.test(file) && !file.startsWith(join("prisma", "client")));
}
