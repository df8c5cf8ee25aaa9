import { execFileSync, spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "@playwright/test";
import { projectFolder } from "@/lib/store/home/project-folder";

/**
 * The path of a Chromium for the browser tests: Playwright's own, the machine's, Playwright's download, or
 * Debian's package where we are root. CHROMIUM names one outright.
 * @returns null where there is none to be had.
 */
export function findChromium(): string | null {
  return (
    onMachine() ??
    afterTrying(process.execPath, [
      ...[join(projectFolder, "node_modules", "@playwright", "test", "cli.js")],
      ...["install", "chromium"],
    ]) ??
    (process.getuid?.() === 0
      ? (afterTrying("apt-get", ["install", "-y", "--no-install-recommends", "chromium"]) ??
        afterTrying("sh", ["-c", "apt-get update && apt-get install -y chromium"]))
      : null)
  );
}

/** What to do where none is found, in one line. */
export const NO_CHROMIUM =
  "No Chromium for the browser tests: install one (Debian: apt-get install chromium; elsewhere: npx playwright install --with-deps chromium) or name one with CHROMIUM=/path.";

function onMachine(): string | null {
  const named = process.env.CHROMIUM;
  const own = chromium.executablePath();
  const path = (process.env.PATH ?? "").split(delimiter);
  const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
  const candidates = [named, own, ...names.flatMap((name) => path.map((at) => join(at, name)))];
  return candidates.find((candidate) => candidate && runs(candidate)) ?? null;
}

/** Some systems keep a script of that name which only says how to install it: so it must tell its version. */
function runs(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return /\d+\.\d+/.test(
      execFileSync(file, ["--version", "--no-sandbox"], {
        encoding: "utf8",
        stdio: ["ignore", "pipe", "ignore"],
        timeout: 20_000,
      }),
    );
  } catch {
    return false;
  }
}

function afterTrying(program: string, words: string[]): string | null {
  if (program !== process.execPath && !existsSync("/usr/bin/apt-get")) return null;
  console.log(`No Chromium yet: trying ${[program, ...words].join(" ").slice(0, 120)}`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  spawnSync(program, words, { stdio: "ignore", env, timeout: 300_000 });
  return onMachine();
}
