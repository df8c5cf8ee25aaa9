import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { projectFolder } from "@/lib/store/home/project-folder";
import { type Constant, constantsOf } from "./constants-of";
import { runTests } from "./run-tests";

// Changes every numeric constant of lib/statistics by 1 % (0 to 0.01), one at a time, in copies of the
// project, and lists the changes that leave the tests of tests/statistics green. Takes minutes.
//   npx tsx --tsconfig lib/command/tsconfig.json tests/statistics/change-constants.ts [part of a file name …]
const FOLDER = "lib/statistics";
const WORKERS = 2;

const parts = process.argv.length > 2 ? process.argv.slice(2) : [""];
const constants = readdirSync(join(projectFolder, FOLDER))
  .filter((file) => file.endsWith(".ts") && parts.some((part) => file.includes(part)))
  .sort()
  .flatMap((file) => constantsOf(`${FOLDER}/${file}`, join(projectFolder, FOLDER, file)));
const home = mkdtempSync(join(tmpdir(), "constants-"));
try {
  process.exitCode = await changeAll();
} finally {
  rmSync(home, { recursive: true, force: true });
}

async function changeAll(): Promise<number> {
  const copies = Array.from({ length: WORKERS }, (_, worker) => copy(join(home, `${worker}`)));
  if ((await runTests(copies[0] as string, [])) !== "red") {
    const waiting = constants.values();
    const survivors: string[] = [];
    let done = 0;
    await Promise.all(
      copies.map(async (folder) => {
        for (const constant of waiting) {
          const outcome = await change(folder, constant);
          done += 1;
          const told = `${constant.file}:${constant.line} ${constant.text} → ${constant.changed}`;
          if (outcome === "green") survivors.push(told);
          console.log(`${done}/${constants.length} ${outcome.padEnd(8)} ${told}`);
        }
      }),
    );
    console.log(survivors.map((told) => `survived: ${told}`).join("\n"));
    console.log(`${constants.length} constants changed, ${survivors.length} survived`);
    return survivors.length === 0 ? 0 : 1;
  }
  console.log("the tests are red before any change");
  return 2;
}

/** Runs the tests that rest on the file, with the constant changed. */
async function change(folder: string, constant: Constant): Promise<string> {
  const path = join(folder, constant.file);
  const source = readFileSync(path, "utf8");
  const { start, end, changed } = constant;
  writeFileSync(path, source.slice(0, start) + changed + source.slice(end));
  try {
    return await runTests(folder, [constant.file]);
  } finally {
    writeFileSync(path, source);
  }
}

/** What the tests of the folder read, and a configuration that needs no database. */
function copy(folder: string): string {
  mkdirSync(folder);
  for (const path of ["lib", "tests/statistics", "tests/data/reference", "tsconfig.json"]) {
    cpSync(join(projectFolder, path), join(folder, path), { recursive: true });
  }
  symlinkSync(join(projectFolder, "node_modules"), join(folder, "node_modules"));
  const config = {
    root: folder,
    resolve: { alias: { "@": folder } },
    test: { include: ["tests/statistics/**/*.test.ts"], testTimeout: 30_000 },
  };
  writeFileSync(join(folder, "vitest.config.mjs"), `export default ${JSON.stringify(config)};\n`);
  return folder;
}
