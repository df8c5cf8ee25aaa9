import { randomBytes } from "node:crypto";
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { markLives, processMark } from "./process-mark";

/** One process's place in the list of those who use the home's database. */
export interface HomeUser {
  /** Leaves the list; true where nobody living is left in it. Call under the home's lock. */
  leave(): Promise<boolean>;
}

/** Enters this process into `users/` of the home. Call under the home's lock. */
export async function enterHome(folder: string): Promise<HomeUser> {
  const users = join(folder, "users");
  await mkdir(users, { recursive: true, mode: 0o700 });
  const file = join(users, `${process.pid}-${randomBytes(4).toString("hex")}`);
  await writeFile(file, `${processMark(process.pid)}`);
  return {
    async leave() {
      await rm(file, { force: true });
      return (await livingUsers(users)) === 0;
    },
  };
}

/** Counts the living and forgets those who died without leaving. */
async function livingUsers(users: string): Promise<number> {
  let living = 0;
  for (const name of await readdir(users)) {
    const mark = await readFile(join(users, name), "utf8").catch(() => "");
    if (markLives(mark)) living += 1;
    else await rm(join(users, name), { force: true });
  }
  return living;
}
