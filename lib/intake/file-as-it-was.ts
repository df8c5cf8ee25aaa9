import { constants } from "node:fs";
import { access, stat } from "node:fs/promises";
import { UnreadableFile } from "./unreadable-file";

/**
 * Looks at a file before it is read. The function that comes back is asked when it was read: it refuses what was written to meanwhile,
 * as rows may be missing then.
 *
 * @throws UnreadableFile where there is no file that may be read
 */
export async function fileAsItWas(path: string, name: string): Promise<() => Promise<void>> {
  await access(path, constants.R_OK).catch(() => {
    throw new UnreadableFile(name, "it cannot be opened; is it still there, and may it be read?");
  });
  const before = await stat(path);
  // A pipe would be waited for without end, and a folder has no rows.
  if (!before.isFile()) throw new UnreadableFile(name, "it is no file with rows in it.");
  return async () => {
    const after = await stat(path).catch(() => undefined);
    if (after?.size !== before.size || after.mtimeMs !== before.mtimeMs)
      throw new UnreadableFile(name, "it changed while it was read; wait until it is written.");
  };
}
