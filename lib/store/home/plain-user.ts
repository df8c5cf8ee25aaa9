import { execFile } from "node:child_process";
import { chmod, chown, readFile, stat } from "node:fs/promises";
import { promisify } from "node:util";
import { HomeTrouble } from "./home-trouble";

const run = promisify(execFile);

/** How a PostgreSQL program is run so that it does not run as root, which PostgreSQL refuses. */
export interface PlainUser {
  /** Words before the program's own. */
  prefix: string[];
  /** The account to run as, where it is another than ours. */
  account: { uid: number; gid: number } | undefined;
}

/**
 * Finds a way to run PostgreSQL in this folder: as ourselves; for root in a user namespace of its own,
 * where root's files belong to a plain number; or else as the account `nobody`.
 * @param data the database's folder, which may not exist yet: whoever owns it goes on owning it.
 * @throws HomeTrouble where root has none of these.
 */
export async function plainUser(folder: string, data: string): Promise<PlainUser> {
  if (process.getuid?.() !== 0) return { prefix: [], account: undefined };
  const owner = await stat(data).catch(() => null);
  if (owner && owner.uid !== 0) {
    return { prefix: [], account: { uid: owner.uid, gid: owner.gid } };
  }
  const accounts = await plainAccounts();
  const first = accounts[0];
  if (first) {
    const prefix = ["unshare", "--user", `--map-user=${first.uid}`, `--map-group=${first.gid}`];
    if (await works([...prefix, process.execPath, "--version"])) {
      return { prefix, account: undefined };
    }
  }
  const nobody = accounts.find((account) => account.name === "nobody") ?? first;
  if (nobody && !owner) {
    const account = { uid: nobody.uid, gid: nobody.gid };
    // Its own folder is `nobody`'s; the home itself may then be passed through, though not listed.
    await chmod(folder, 0o711);
    if (await works([process.execPath, "-e", REACHES, folder], account)) {
      return { prefix: [], account };
    }
    await chmod(folder, 0o700);
  }
  throw new HomeTrouble(
    `PostgreSQL does not run as root, and no plain user of this machine can reach ${folder}: run as another user, choose a home outside root's own folder with CANAL_AUDIT_HOME, or give a server with DATABASE_URL.`,
  );
}

/** Gives a folder to the account that PostgreSQL runs as. */
export async function giveTo(user: PlainUser, path: string): Promise<void> {
  if (user.account) await chown(path, user.account.uid, user.account.gid);
}

const REACHES = "fs.accessSync(process.argv[1], fs.constants.X_OK)";

async function works(words: string[], account?: PlainUser["account"]): Promise<boolean> {
  const [program = "", ...rest] = words;
  return run(program, rest, { timeout: 10_000, ...account }).then(
    () => true,
    () => false,
  );
}

/** Accounts other than root; initdb wants the name of the number it runs as. */
async function plainAccounts(): Promise<{ name: string; uid: number; gid: number }[]> {
  const lines = (await readFile("/etc/passwd", "utf8").catch(() => "")).split("\n");
  return lines
    .map((line) => line.split(":"))
    .map(([name = "", , uid, gid]) => ({ name, uid: Number(uid), gid: Number(gid) }))
    .filter((account) => account.uid > 0);
}
