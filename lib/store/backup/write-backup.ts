import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { open, readFile, rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGzip } from "node:zlib";
import pg from "pg";
import { HomeTrouble } from "../home/home-trouble";
import type { Home } from "../home/open-home";
import { appliedMigrations } from "./applied-migrations";
import { copiedTable } from "./copied-table";
import { type HomeFile, secretFiles, waitingNames } from "./home-files";
import { type Manifest, manifestName } from "./manifest";
import { plainlyWritten, storedTables } from "./stored-tables";
import { tarEnd, tarEntry } from "./tar";

/** Bytes of a home's file in one entry. */
const PART = 4 * 2 ** 20;

export type BackupHow = {
  readonly software: string;
  /** Fingerprint of the home's patient key. */
  readonly patientKey: string;
  /** Also the keys, and the files that wait: with them patients can be recognised. */
  readonly secrets: boolean;
  /** Of the same revision of the records. */
  readonly figures?: Manifest["figures"];
};

/**
 * Writes all that the database holds at one moment into a gzipped tar archive, readable by its owner only: parts of each
 * table in COPY's text format, and last the manifest. The file bears its name only once it is whole on the disk.
 *
 * @throws HomeTrouble where the file is there already, or the database holds nothing yet
 */
export async function writeBackup(home: Home, file: string, how: BackupHow): Promise<Manifest> {
  if (await stat(file).catch(() => null))
    throw new HomeTrouble(`${file} is there already; name a file that is not.`);
  const draft = `${file}.${process.pid}.part`;
  const client = new pg.Client({ connectionString: home.url });
  client.on("error", () => undefined);
  await client.connect();
  let manifest: Manifest | undefined;
  try {
    await client.query("begin isolation level repeatable read read only");
    await client.query(plainlyWritten);
    if (how.figures) await refuseChanged(client, how.figures.revision);
    const archive = Readable.from(
      archived(client, home, how, (made) => {
        manifest = made;
      }),
      { objectMode: false },
    );
    const into = createWriteStream(draft, { mode: 0o600, flags: "wx" });
    await pipeline(archive, createGzip(), into);
    await flushed(draft);
    await rename(draft, file);
    await flushed(dirname(file)).catch(() => undefined);
  } finally {
    await rm(draft, { force: true });
    await client.end().catch(() => undefined);
  }
  if (!manifest) throw new Error("no manifest was written");
  return manifest;
}

async function* archived(
  client: pg.ClientBase,
  home: Home,
  how: BackupHow,
  onDone: (manifest: Manifest) => void,
): AsyncGenerator<Buffer> {
  const at = new Date();
  const migrations = await appliedMigrations(client);
  if (migrations.length === 0)
    throw new HomeTrouble("This database holds nothing yet: there is nothing to back up.");
  const entry = (name: string, content: Buffer) => tarEntry({ name, content }, at);
  const tables: Manifest["tables"] = [];
  for (const table of await storedTables(client)) {
    const parts = copiedTable(client, table);
    for (let part = 1; ; part += 1) {
      const next = await parts.next();
      if (next.done) {
        tables.push(next.value);
        break;
      }
      yield* entry(`tables/${table.name}/${String(part).padStart(6, "0")}.copy`, next.value);
    }
  }
  const waiting = await waitingNames(client);
  const files: Manifest["files"] = [];
  for (const { name, content } of how.secrets ? await filesOf(home, waiting) : []) {
    for (let from = 0; from === 0 || from < content.length; from += PART)
      yield* entry(`home/${name}`, content.subarray(from, from + PART));
    const sha256 = createHash("sha256").update(content).digest("hex");
    files.push({ name, bytes: content.length, sha256 });
  }
  const version = await client.query("show server_version_num");
  const manifest: Manifest = {
    format: "canal-audit-backup-1",
    software: how.software,
    writtenAt: at.toISOString(),
    postgres: Number(version.rows[0].server_version_num),
    migrations,
    tables,
    sequences: await sequencesNow(client),
    patientKey: how.patientKey,
    files,
    waitingLeft: how.secrets ? 0 : waiting.length,
    ...(how.figures ? { figures: how.figures } : {}),
  };
  yield* entry(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`));
  yield tarEnd;
  onDone(manifest);
}

async function filesOf(home: Home, waiting: readonly string[]): Promise<HomeFile[]> {
  const files = await secretFiles(home.folder, home.key);
  for (const name of waiting)
    files.push({ name, content: await readFile(join(home.folder, name)) });
  return files;
}

async function refuseChanged(client: pg.ClientBase, revision: string): Promise<void> {
  const { rows } = await client.query<{ value: string }>(
    "select value from settings where key = 'revision of the records'",
  );
  if ((rows[0]?.value ?? "0") !== revision)
    throw new HomeTrouble("Records changed while their figures were computed: try again.");
}

/** Sequences are outside every snapshot: read after the tables, none lies behind their rows. */
async function sequencesNow(client: pg.ClientBase): Promise<Manifest["sequences"]> {
  const { rows } = await client.query<{ name: string; value: string }>(
    `select sequencename as name, last_value::text as value from pg_sequences
     where schemaname = current_schema() and last_value is not null order by 1`,
  );
  return rows;
}

async function flushed(path: string): Promise<void> {
  const file = await open(path, "r");
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}
