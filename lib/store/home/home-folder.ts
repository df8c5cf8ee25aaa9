import { access, constants, mkdir, realpath } from "node:fs/promises";
import { join, resolve } from "node:path";
import { HomeTrouble } from "./home-trouble";
import { projectFolder } from "./project-folder";

/**
 * Where this run's home is: CANAL_AUDIT_HOME (a relative path is read from the caller's folder, which npm
 * keeps in INIT_CWD), else `.home` in the project. Does not touch the disk.
 */
export function homeFolder(): string {
  const chosen = process.env.CANAL_AUDIT_HOME?.trim();
  return chosen
    ? resolve(process.env.INIT_CWD ?? process.cwd(), chosen)
    : join(projectFolder, ".home");
}

/**
 * Makes the home folder where it is missing (readable by its owner only) and answers its real path.
 * @throws HomeTrouble where it cannot be made or written to.
 */
export async function makeHomeFolder(folder = homeFolder()): Promise<string> {
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await access(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    return await realpath(folder);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const why =
      code === "ENOTDIR" || code === "EEXIST" ? "is not a folder" : "cannot be written to";
    throw new HomeTrouble(
      `The home ${folder} ${why}: choose another with CANAL_AUDIT_HOME or change its permissions.`,
    );
  }
}
