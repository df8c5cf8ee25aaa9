import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "@/lib/store/home/project-folder";
import { loggedActs } from "@/lib/views/log/logged-acts";
import { loggedPages, pagesWithoutReading } from "@/lib/views/log/logged-pages";
import { loggedRoutes, routesWithoutReading } from "@/lib/views/log/logged-routes";
import { loggedVerbs } from "@/lib/views/log/logged-verbs";

// Expected values are the project's own rule: every page, route, action and verb leaves a line in the log, or stands among those that
// need none with the reason.

test("every page reads through within under its own name, or reads nothing", () => {
  const pages = filesOf("app").filter((file) => file.endsWith("/page.tsx"));
  expect(pages.length).toBeGreaterThan(40);
  for (const file of pages) {
    const name = `/${file.slice("app/".length, -"/page.tsx".length)}`;
    const page = file === "app/page.tsx" ? "/" : name;
    const through = [...read(file).matchAll(/\bwithin\(\s*"([^"]+)"/g)].map((found) => found[1]);
    const isExpected = page in pagesWithoutReading || read(file).includes("<EditorFrame");
    if (through.length === 0) expect(isExpected, `${file} reads past within`).toBe(true);
    else expect(through, file).toEqual([page]);
  }
  const there = pages.map((file) => `/${file.slice("app/".length, -"/page.tsx".length)}`);
  expect(Object.keys(loggedPages).filter((page) => !there.includes(page))).toEqual([]);
});

test("every server action answers through answered under its own name", () => {
  const files = filesOf("app").filter((file) => /^"use server";/.test(read(file)));
  const acts: string[] = [];
  for (const file of files) {
    // From one exported function to the next.
    for (const part of read(file)
      .split(/^export async function /m)
      .slice(1)) {
      const act = part.slice(0, part.indexOf("("));
      acts.push(act);
      if (act === "enter" || act === "enterSecond") continue;
      expect(part.includes(`("${act}", form`), `${file} ${act}`).toBe(true);
    }
    if (file.endsWith("enter.ts")) continue;
    expect(read(file), file).toMatch(/import \{ answered\b/);
  }
  expect(acts.sort()).toEqual(Object.keys(loggedActs).sort());
});

test("every route answers through answering under its own name, or is told why not", () => {
  const routes: string[] = [];
  for (const file of filesOf("app").filter((one) => one.endsWith("/route.ts"))) {
    const folder = file.slice("app".length, -"/route.ts".length);
    const methods = [...read(file).matchAll(/^export (?:async function|const) ([A-Z]+)\b/gm)];
    expect(methods.length, file).toBeGreaterThan(0);
    for (const [, method] of methods) {
      const route = `${method} ${folder}`;
      routes.push(route);
      if (route in routesWithoutReading) continue;
      expect(read(file).replaceAll(/\s+/g, ""), route).toContain(
        `answering("${route}",`.replaceAll(/\s+/g, ""),
      );
    }
  }
  const known = [...Object.keys(loggedRoutes), ...Object.keys(routesWithoutReading)];
  expect(routes.sort()).toEqual(known.sort());
});

test("every verb that opens the home does it through byCommand, and each name is used", () => {
  const files = filesOf("lib/command").filter((file) => !file.includes("/start/"));
  // The watch is never done, and writes a line a file; a backup takes a database as it is, whose log may be older.
  const past = files.filter((file) => /\bwithHome\(/.test(read(file)));
  expect(past.sort()).toEqual(
    ["back-up", "restore-backup", "watch-folder"].map((one) => `lib/command/${one}.ts`),
  );
  for (const file of past) expect(read(file)).toContain('noteCommand("canal-audit ');
  const text = files.map(read).join("\n");
  expect(Object.keys(loggedVerbs).filter((verb) => !text.includes(`"${verb}"`))).toEqual([]);
});

function filesOf(folder: string): string[] {
  return readdirSync(join(projectFolder, folder), { recursive: true, encoding: "utf8" })
    .map((file) => join(folder, file).replaceAll("\\", "/"))
    .filter((file) => /\.tsx?$/.test(file));
}

function read(file: string): string {
  return readFileSync(join(projectFolder, file), "utf8");
}
