import { execFile } from "node:child_process";
import { open, rename, stat, writeFile } from "node:fs/promises";
import { setTimeout as sleep } from "node:timers/promises";
import { freePort, tryPort } from "./free-port";
import { HomeTrouble } from "./home-trouble";
import { giveTo, type PlainUser } from "./plain-user";
import type { PostgresPrograms } from "./postgres-programs";
import { disownPostmaster, readPostmaster } from "./postmaster-file";

/** The embedded server of one home: where it lives and how it is run. */
export interface PostgresServer {
  data: string;
  log: string;
  user: PlainUser;
  programs: PostgresPrograms;
}

const HOST = "127.0.0.1";
const LOG_BYTES = 10_000_000;

/**
 * Answers the port of the running server, and starts it where none runs (a server that crashed recovers
 * by itself while it starts). Call under the home's lock.
 * @param keptPort the port of earlier times, used again where it is free.
 */
export async function joinOrStart(
  server: PostgresServer,
  keptPort: number | undefined,
): Promise<number> {
  const running = await settledPostmaster(server.data);
  if (running) return running.port;
  await disownPostmaster(server.data);
  await keepLogShort(server);
  for (let attempt = 1; ; attempt += 1) {
    const kept = attempt === 1 && keptPort ? await tryPort(HOST, keptPort) : "none";
    const port = typeof kept === "number" ? kept : await freePort(HOST);
    const trouble = await start(server, port);
    if (trouble === null) return port;
    // Another program may take the port in between, and a killed server's helpers need a moment to go.
    const passes = /in use|shared memory/i.test(trouble);
    if (!passes || attempt === 20) {
      throw new HomeTrouble(
        `The embedded PostgreSQL does not start (${trouble}): its log is ${server.log}.`,
      );
    }
    await sleep(500);
  }
}

/**
 * Stops the server and waits until it is down. Call under the home's lock. One that does not end in time, as a shutdown in the middle of
 * recovery after a crash may not, is stopped at once: what was committed lies in its log, and the next start recovers it.
 */
export async function stopServer(server: PostgresServer): Promise<void> {
  if (!(await settledPostmaster(server.data))) return;
  const stop = (how: string, seconds: number) =>
    postgresProgram(server, server.programs.pgCtl, [
      ...["stop", "-w", "-t", String(seconds), "-m", how, "-D", server.data],
    ]);
  await stop("fast", 90).catch(async () => {
    if (await readPostmaster(server.data)) await stop("immediate", 30);
  });
}

/** Runs one of the server's programs as the plain user; answers what it printed. */
export function postgresProgram(
  server: PostgresServer,
  program: string,
  words: string[],
): Promise<string> {
  const [first = program, ...rest] = [...server.user.prefix, program, ...words];
  const env = { ...process.env };
  for (const name of Object.keys(env)) if (/^(PG|LC_|LANG)/.test(name)) delete env[name];
  return new Promise((resolve, reject) => {
    execFile(
      first,
      rest,
      { ...server.user.account, env: { ...env, LC_ALL: "C" }, cwd: "/" },
      (error, stdout, stderr) =>
        error ? reject(new Error(`${stderr || stdout || error.message}`.trim())) : resolve(stdout),
    );
  });
}

/** The running server once it answers, or null where there is none or it has just gone. */
async function settledPostmaster(data: string): Promise<{ port: number } | null> {
  for (;;) {
    const found = await readPostmaster(data);
    if (!found || found.ready) return found;
    await sleep(50);
  }
}

async function start(server: PostgresServer, port: number): Promise<string | null> {
  const from = (await stat(server.log).catch(() => null))?.size ?? 0;
  try {
    await postgresProgram(server, server.programs.pgCtl, [
      ...["start", "-w", "-t", "3600", "-D", server.data, "-l", server.log, "-o", `-p ${port}`],
    ]);
    return null;
  } catch (error) {
    const said = await logSince(server.log, from);
    const line = /(?:FATAL|PANIC|ERROR|LOG: {2}could not.*):? +(.*)/.exec(said)?.[0];
    return (line ?? (said || String(error))).trim().split("\n").at(-1) ?? "no reason told";
  }
}

async function logSince(log: string, from: number): Promise<string> {
  const file = await open(log, "r").catch(() => null);
  if (!file) return "";
  try {
    const size = Math.min((await file.stat()).size - from, 20_000);
    const { buffer, bytesRead } = await file.read(Buffer.alloc(Math.max(size, 0)), 0, size, from);
    return buffer.toString("utf8", 0, bytesRead);
  } finally {
    await file.close();
  }
}

async function keepLogShort(server: PostgresServer): Promise<void> {
  const found = await stat(server.log).catch(() => null);
  if (found && found.size > LOG_BYTES) await rename(server.log, `${server.log}.old`);
  await writeFile(server.log, "", { flag: "a", mode: 0o600 });
  await giveTo(server.user, server.log);
}
