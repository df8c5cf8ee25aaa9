import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "@/lib/store/home/project-folder";

// The limit is the project's own rule.

const LIMIT = 250;
const FOLDERS = ["app", "lib", "prisma", "seed", "tests", ".ci"];

/** Longer than the limit because they are lists of constants, one entry after the other, or generated. */
const LISTS: string[] = ["lib/records/tables.ts"];
const GENERATED = /^prisma\/(client|migrations)\/|^tests\/browser\/results\//;
const FORBIDDEN = /(^|\/)(index|utils?|helpers?|types|constants)\.tsx?$/;

test("no file is longer than 250 lines but lists named here", () => {
  const long = files()
    .map((file) => ({ file, lines: lineCount(file) }))
    .filter(({ file, lines }) => lines > LIMIT && !LISTS.includes(file));
  expect(long).toEqual([]);
});

test("files are named in kebab-case for their idea, never for their kind", () => {
  const names = files().filter((file) => /\.tsx?$/.test(file));
  expect(names.length).toBeGreaterThan(50);
  expect(names.filter((file) => FORBIDDEN.test(file))).toEqual([]);
  const odd = names.filter((file) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z]+)*\.tsx?$/.test(last(file)));
  expect(odd).toEqual([]);
});

function files(): string[] {
  return FOLDERS.flatMap((folder) =>
    readdirSync(join(projectFolder, folder), { recursive: true, encoding: "utf8" }).map((file) =>
      join(folder, file).replaceAll("\\", "/"),
    ),
  ).filter((file) => /\.(tsx?|css|mjs|sql|sh)$|\/run$/.test(file) && !GENERATED.test(file));
}

function lineCount(file: string): number {
  return readFileSync(join(projectFolder, file), "utf8").split("\n").length - 1;
}

function last(file: string): string {
  return file.split("/").at(-1) ?? "";
}
