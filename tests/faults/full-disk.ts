import { execFileSync } from "node:child_process";
import { mkdir, rm, statfs, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { loadBackup } from "@/lib/store/backup/load-backup";
import { checkedBackup } from "@/lib/store/backup/read-backup";
import { actNames } from "./acts";
import { backupOf } from "./base";
import { type Ground, type Outcome, tried } from "./ground";
import { ownServer } from "./own-server";

/** MB left on the disk when an act begins. */
const left = [0, 0.3, 1, 2, 4, 8];

/**
 * Acts while the disk is full or fills up. The disk is a small tmpfs with a server of its own, which the base comes to by backup and
 * restore; null where nothing may be mounted.
 */
export async function fullDisk(on: Ground, points: number): Promise<Outcome | null> {
  const disk = join(on.server.folder, "disk");
  await mkdir(disk, { recursive: true });
  const mounted = runs("mount", ["-t", "tmpfs", "-o", "size=256m", "canal-audit-faults", disk]);
  if (!mounted) return null;
  const leave = () => runs("umount", [disk]);
  process.once("exit", leave);
  const server = await ownServer(join(disk, "home"));
  try {
    const backup = join(on.server.folder, "base.tar.gz");
    await backupOf(on.base.database.url, on.server.folder, backup);
    const database = await server.database();
    await loadBackup(database.url, backup, await checkedBackup(backup), false);
    const there: Ground = { ...on, server, base: { ...on.base, database } };
    const ballast = join(disk, "ballast");
    return await filled(there, points, "a small tmpfs", async (mb, work) => {
      const { bavail, bsize } = await statfs(disk);
      await writeFile(ballast, Buffer.alloc(Math.max(0, bavail * bsize - mb * 2 ** 20)));
      const done = await work();
      await rm(ballast);
      return done;
    });
  } finally {
    await server.close();
    if (leave()) process.off("exit", leave);
  }
}

/** As a full disk, where nothing may be mounted: files of the server may grow to a size only (RLIMIT_FSIZE). */
export async function limitedFiles(on: Ground, points: number): Promise<Outcome> {
  return filled(on, points, "RLIMIT_FSIZE", async (mb, work) => {
    const pid = await on.server.pid();
    const limit = (size: string) => runs("prlimit", ["--pid", String(pid), `--fsize=${size}:`]);
    limit(String(Math.round(16_384 + mb * 20_000)));
    const done = await work();
    limit("unlimited");
    return done;
  });
}

type Filling = <Done>(mb: number, work: () => Promise<Done>) => Promise<Done>;

async function filled(on: Ground, points: number, by: string, filling: Filling): Promise<Outcome> {
  const came: string[] = [];
  const troubles: string[] = [];
  for (const point of on.here(points)) {
    const name = actNames[point % actNames.length] ?? "import";
    const mb = left[Math.floor(point + point / left.length) % left.length] ?? 0;
    const one = await tried(on, name, (process, { url }) =>
      filling(mb, () => {
        process.go({ name, stage: on.base.stage, url });
        return process.ended;
      }),
    );
    came.push(one.came);
    troubles.push(...one.troubles);
  }
  return { what: `disk full (${by})`, points: came.length, came, troubles };
}

function runs(program: string, words: string[]): boolean {
  try {
    execFileSync(program, words, { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}
