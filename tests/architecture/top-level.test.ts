import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "@/lib/store/home/project-folder";

/** The ten entries of the design. */
const DESIGN = [
  ...["package.json", "tsconfig.json", "next.config.ts", "README.md", "DEVELOPERS.md"],
  ...["app", "prisma", "lib", "tests", "seed"],
];

/** What tools force to stand at the top, each with its reason. */
const FORCED: Record<string, string> = {
  "package-lock.json": "npm ci reads it beside package.json and nowhere else",
  ".gitignore": "git must ignore node_modules, .next and .home before anything else is there",
  "proxy.ts": "Next finds what runs before every page by this name beside app, and nowhere else",
  ".ci":
    "what continuous integration runs; a hidden folder, so that it is not taken for the project",
};

/** Packages that the job asks for: each must do work in the project itself, not only be installed. */
const REQUIRED: Record<string, RegExp> = {
  next: /^next(\/|$)/,
  prisma: /^(prisma\/config|@prisma\/adapter-pg)$|^@\/prisma\/client\/client$/,
  pg: /^pg$/,
  recharts: /^recharts$/,
  zod: /^zod$/,
  "simple-statistics": /^simple-statistics$/,
  vitest: /^vitest(\/|$)/,
  playwright: /^@playwright\/test$/,
};

test("the top level holds the design's ten entries and what tools force, nothing else", () => {
  const there = new Set(filesOfProject().map((file) => file.split("/")[0] ?? ""));
  expect([...there].filter((entry) => !DESIGN.includes(entry) && !(entry in FORCED))).toEqual([]);
  expect([...DESIGN, ...Object.keys(FORCED)].filter((entry) => !there.has(entry))).toEqual([]);
});

test.each(Object.entries(REQUIRED))("%s does work in the project", (_, name) => {
  const importers = sources().filter((file) => importsOf(file).some((from) => name.test(from)));
  expect(importers.length).toBeGreaterThan(0);
});

/** What git keeps or would keep; without git (an unpacked archive) what lies there but what is made. */
function filesOfProject(): string[] {
  try {
    return execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
      cwd: projectFolder,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    })
      .split("\n")
      .filter((file) => file !== "");
  } catch {
    const made = /^(node_modules|\.next|\.home|\.git|next-env\.d\.ts|.*\.tsbuildinfo)$/;
    return readdirSync(projectFolder).filter((entry) => !made.test(entry));
  }
}

function sources(): string[] {
  return ["app", "lib", "prisma", "seed", "tests"].flatMap((folder) =>
    readdirSync(join(projectFolder, folder), { recursive: true, encoding: "utf8" })
      .map((file) => join(projectFolder, folder, file))
      .filter((file) => /\.tsx?$/.test(file) && !file.includes(join("prisma", "client"))),
  );
}

function importsOf(file: string): string[] {
  const text = readFileSync(file, "utf8");
  return [...text.matchAll(/(?:\bfrom\s+|\bimport\s+|\bimport\()"([^"]+)"/g)].map(
    (match) => match[1] ?? "",
  );
}
