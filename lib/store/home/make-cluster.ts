import { appendFile, mkdir, rename, rm, stat, statfs, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { HomeTrouble } from "./home-trouble";
import { giveTo } from "./plain-user";
import { type PostgresServer, postgresProgram } from "./postgres-server";

/**
 * Initialises the data folder where there is none: whole under another name first, so that a run cut
 * short leaves nothing half made. Call under the home's lock.
 * @param password of the superuser `keeper`.
 */
export async function makeCluster(server: PostgresServer, password: string): Promise<void> {
  if (await stat(server.data).catch(() => null)) return;
  const draft = `${server.data}.new`;
  await rm(draft, { recursive: true, force: true });
  await mkdir(draft, { mode: 0o700 });
  await giveTo(server.user, draft);
  const secret = join(dirname(server.data), "initdb-password");
  await writeFile(secret, password, { mode: 0o600 });
  await giveTo(server.user, secret);
  try {
    // A fixed locale of PostgreSQL's own: sorting must not depend on the machine, nor LANG choose the encoding.
    await postgresProgram(server, server.programs.initdb, [
      ...["-D", draft, "--username=keeper", `--pwfile=${secret}`, "--auth=scram-sha-256"],
      ...["--encoding=UTF8", "--locale-provider=builtin", "--builtin-locale=C.UTF-8"],
      ...["--locale=C", "--data-checksums", "--no-instructions", "--no-sync"],
    ]);
    await appendFile(join(draft, "postgresql.conf"), await settings());
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    const reason = (error instanceof Error ? error.message : String(error)).split("\n").at(-1);
    throw new HomeTrouble(
      `The database could not be made in ${server.data}: ${reason?.replace(/\.$/, "")}.`,
    );
  } finally {
    await rm(secret, { force: true });
  }
  await rename(draft, server.data);
}

async function settings(): Promise<string> {
  // Containers often give /dev/shm 64 MB, too little for parallel queries; files in the data folder serve as well.
  const shm = await statfs("/dev/shm").catch(() => null);
  const small = process.platform === "linux" && (!shm || shm.bsize * shm.blocks < 256 * 2 ** 20);
  const lines = [
    "listen_addresses = '127.0.0.1'",
    "unix_socket_directories = ''",
    "timezone = 'UTC'",
    "log_timezone = 'UTC'",
    "max_connections = 100",
    "shared_buffers = '256MB'",
    "work_mem = '32MB'",
    "maintenance_work_mem = '128MB'",
    "max_wal_size = '2GB'",
    "jit = off",
    ...(small ? ["dynamic_shared_memory_type = mmap"] : []),
  ];
  return `\n# Canal Audit\n${lines.join("\n")}\n`;
}
