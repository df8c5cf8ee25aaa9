import { readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { HomeTrouble } from "./home-trouble";
import { lockHolder, takeLock } from "./lock";

const FILE = "start.lock";
/** Of those that share a home, each has its own. */
const SHARED = /^start-\d+\.lock$/;

/**
 * Refuses where a living `start` holds the home. Touches nothing, so that it can be asked first of all.
 * @throws HomeTrouble naming the holder's process and address.
 */
export async function refuseHeldHome(folder: string): Promise<void> {
  const shared = (await readdir(folder).catch(() => [])).filter((name) => SHARED.test(name));
  for (const file of [FILE, ...shared]) await refuseHeld(folder, file);
}

async function refuseHeld(folder: string, file: string): Promise<void> {
  const holder = await lockHolder(join(folder, file));
  if (holder) {
    throw new HomeTrouble(
      `The home ${folder} is already in use by another start (process ${holder.pid}, ${holder.note}): stop that one first, or choose another home with CANAL_AUDIT_HOME.`,
    );
  }
}

/**
 * Holds the home for one `start` until `release`, or until the process dies. Commands may go on beside it.
 * @param address told to whoever is refused.
 * @param port where the database is elsewhere: then several may share the home, each at a port of its own.
 */
export async function holdHome(
  folder: string,
  address: string,
  port?: number,
): Promise<{ release(): Promise<void> }> {
  const file = port === undefined ? FILE : `start-${port}.lock`;
  while (!(await takeLock(join(folder, file), address))) await refuseHeld(folder, file);
  return { release: () => rm(join(folder, file), { force: true }) };
}
