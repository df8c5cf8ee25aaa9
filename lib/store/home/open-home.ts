import { randomBytes } from "node:crypto";
import { readFile, rename, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { standingUrl } from "../wall/standing-url";
import { databaseAnswers } from "./database-answers";
import {
  type DatabaseAccess,
  keeperUrl,
  makeDatabase,
  ownerUrl,
  viewersUrl,
} from "./home-database";
import { makeHomeFolder } from "./home-folder";
import { HomeTrouble } from "./home-trouble";
import { enterHome } from "./home-users";
import { withLock } from "./lock";
import { makeCluster } from "./make-cluster";
import { toBeClosed } from "./opened-homes";
import { makePatientKey, patientKey } from "./patient-key";
import { plainUser } from "./plain-user";
import { postgresPrograms } from "./postgres-programs";
import { joinOrStart, type PostgresServer, stopServer } from "./postgres-server";

/** An opened home: its database answers and its key is there. */
export interface Home {
  /** postgresql:// address of the role that owns the tables: for whoever holds the home's files. */
  url: string;
  /** Address of the role as which requests are asked, which owns nothing; that of the owner where DATABASE_URL names the only one. */
  viewersUrl: string;
  /** Address of the embedded server's superuser; null with DATABASE_URL. */
  keeperUrl: string | null;
  /** Absolute path of the home. */
  folder: string;
  /** The 32-byte key for patient references. */
  key: Buffer;
  /** Leaves the home; the last one to leave stops the embedded server. May be called twice. */
  close(): Promise<void>;
}

/**
 * Opens the home of CANAL_AUDIT_HOME: joins its PostgreSQL or starts it, or uses that of DATABASE_URL.
 * Several processes may have one home open. Does not migrate.
 * @param options.onProgress told what takes a while, in a few words.
 * @throws HomeTrouble with one plain sentence.
 */
export async function openHome(
  options: { onProgress?: (doing: string) => void } = {},
): Promise<Home> {
  const folder = await makeHomeFolder();
  const url = process.env.DATABASE_URL?.trim();
  return url ? openOther(folder, url) : openEmbedded(folder, options.onProgress ?? (() => {}));
}

async function openOther(folder: string, url: string): Promise<Home> {
  await databaseAnswers(url);
  const viewersUrl = process.env.DATABASE_URL_OF_VIEWERS?.trim() || url;
  const key = await makePatientKey(folder);
  const held = standingUrl(url, "holder");
  return { url: held, viewersUrl, keeperUrl: null, folder, key, close: async () => {} };
}

async function openEmbedded(folder: string, tell: (doing: string) => void): Promise<Home> {
  const lock = join(folder, "home.lock");
  const data = join(folder, "postgres");
  return withLock(lock, async () => {
    const isNew = !(await stat(data).catch(() => null));
    // A home that holds records and lost its key must not quietly get another.
    const key = isNew ? await makePatientKey(folder) : await patientKey(folder);
    const server: PostgresServer = {
      data,
      log: join(folder, "postgres.log"),
      user: await plainUser(folder, data),
      programs: await postgresPrograms(),
    };
    const kept = await readAccess(folder, isNew);
    if (isNew) tell("making the database");
    await makeCluster(server, kept.keeperPassword);
    const user = await enterHome(folder);
    try {
      const port = await joinOrStart(server, kept.port || undefined);
      const access = { ...kept, port };
      if (port !== kept.port) await writeAccess(folder, access);
      await makeDatabase(access);
      return {
        url: ownerUrl(access),
        viewersUrl: viewersUrl(access),
        keeperUrl: keeperUrl(access),
        folder,
        key,
        close: toBeClosed(
          once(() =>
            withLock(lock, async () => {
              if (await user.leave()) await stopServer(server);
            }),
          ),
        ),
      };
    } catch (error) {
      if (await user.leave()) await stopServer(server).catch(() => {});
      throw error;
    }
  });
}

/** Port and passwords are kept in `database.json`, mode 0600, and made together with the database. */
async function readAccess(folder: string, isNew: boolean): Promise<DatabaseAccess> {
  const file = join(folder, "database.json");
  const text = await readFile(file, "utf8").catch(() => null);
  if (text !== null) {
    const kept = JSON.parse(text) as Omit<DatabaseAccess, "viewersPassword"> &
      Partial<DatabaseAccess>;
    if (kept.viewersPassword) return { ...kept, viewersPassword: kept.viewersPassword };
    // A home of before the wall.
    const more = { ...kept, viewersPassword: password() };
    await writeAccess(folder, more);
    return more;
  }
  if (!isNew) {
    throw new HomeTrouble(
      `${file}, which holds the database's passwords, is missing: put it back from your copy.`,
    );
  }
  const made = {
    port: 0,
    keeperPassword: password(),
    ownerPassword: password(),
    viewersPassword: password(),
  };
  await writeAccess(folder, made);
  return made;
}

async function writeAccess(folder: string, access: DatabaseAccess): Promise<void> {
  const file = join(folder, "database.json");
  await writeFile(`${file}.new`, `${JSON.stringify(access)}\n`, { mode: 0o600, flush: true });
  await rename(`${file}.new`, file);
}

function password(): string {
  return randomBytes(24).toString("hex");
}

function once(work: () => Promise<void>): () => Promise<void> {
  let done: Promise<void> | undefined;
  return () => {
    done ??= work();
    return done;
  };
}
