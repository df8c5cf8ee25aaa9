import { rm } from "node:fs/promises";
import { join } from "node:path";
import { HomeTrouble } from "./home-trouble";
import { lockHolder, takeLock } from "./lock";

const FILE = "start.lock";

/**
 * Refuses where a living `start` holds the home. Touches nothing, so that it can be asked first of all.
 * @throws HomeTrouble naming the holder's process and address.
 */
export async function refuseHeldHome(folder: string): Promise<void> {
  const holder = await lockHolder(join(folder, FILE));
  if (holder) {
    throw new HomeTrouble(
      `The home ${folder} is already in use by another start (process ${holder.pid}, ${holder.note}): stop that one first, or choose another home with CANAL_AUDIT_HOME.`,
    );
  }
}

/**
 * Holds the home for one `start` until `release`, or until the process dies. Commands may go on beside it.
 * @param address told to whoever is refused.
 */
export async function holdHome(
  folder: string,
  address: string,
): Promise<{ release(): Promise<void> }> {
  const file = join(folder, FILE);
  while (!(await takeLock(file, address))) await refuseHeldHome(folder);
  return { release: () => rm(file, { force: true }) };
}
