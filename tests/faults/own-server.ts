import { readdirSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { disconnect } from "@/lib/store/database";
import { type Home, openHome } from "@/lib/store/home/open-home";
import { readPostmaster } from "@/lib/store/home/postmaster-file";
import { isAlive, parentOf } from "@/lib/store/home/process-mark";
import { execute, type ScratchDatabase, scratchDatabase } from "@/lib/store/home/scratch-database";
import { standingUrl } from "@/lib/store/wall/standing-url";

/** An embedded PostgreSQL of the faults' own, which may be killed and is started again. */
export type OwnServer = {
  readonly folder: string;
  /** Address of the role that the application uses. */
  url(): string;
  /** A database of its own, copied from another where one is named. */
  database(template?: string): Promise<ScratchDatabase>;
  /** SIGKILL to the server and every process of it. */
  kill(): Promise<void>;
  /** SIGKILL to one process of it that works for this database: PostgreSQL then starts the others anew. */
  killBackend(database: string): Promise<void>;
  /** Starts it where it is down, and waits until it answers. */
  up(): Promise<void>;
  /** The server's own process. */
  pid(): Promise<number>;
  close(): Promise<void>;
};

export async function ownServer(folder: string): Promise<OwnServer> {
  const homes: Home[] = [];
  const data = `${folder}/postgres`;
  const open = async () => {
    const before = { ...process.env };
    process.env.CANAL_AUDIT_HOME = folder;
    delete process.env.DATABASE_URL;
    try {
      homes.push(await openHome());
    } finally {
      process.env.CANAL_AUDIT_HOME = before.CANAL_AUDIT_HOME ?? folder;
      if (before.DATABASE_URL) process.env.DATABASE_URL = before.DATABASE_URL;
    }
  };
  const last = () => {
    const home = homes.at(-1);
    if (!home) throw new Error("the server was never opened");
    return home;
  };
  await open();
  const keeper = last().keeperUrl ?? "";
  await execute(keeper, "alter role canal_audit createdb");
  // Processes are killed, never the machine: what the system has taken is not lost.
  await execute(keeper, "alter system set fsync = off");
  await execute(keeper, "select pg_reload_conf()");
  const pid = async () => (await readPostmaster(data))?.pid ?? 0;
  return {
    folder,
    pid,
    url: () => last().url,
    database: (template) => scratchDatabase(last().url, template),
    async kill() {
      const postmaster = await pid();
      if (!postmaster) return;
      const all = [postmaster, ...childrenOf(postmaster)];
      for (const one of all) end(one);
      while (all.some(isAlive)) await sleep(20);
    },
    async killBackend(database) {
      const found = await asked(last().keeperUrl ?? "", backends, [database]).catch(() => []);
      const [one] = found;
      if (one) end(Number(one.pid));
    },
    async up() {
      await disconnect().catch(() => undefined);
      for (let attempt = 1; ; attempt += 1) {
        if (!(await pid())) await open();
        const answer = await asked(last().url, "select 1").catch(() => null);
        if (answer) return;
        if (attempt === 300) throw new Error("the server does not come up again");
        await sleep(100);
      }
    },
    async close() {
      await disconnect().catch(() => undefined);
      for (const home of homes) await home.close();
    },
  };
}

const backends = `select pid from pg_stat_activity where datname = $1 and backend_type = 'client backend' order by state = 'active' desc`;

/** Waits until nobody works on the database any more: a killed process's last statement may still run for a moment. */
export async function leftAlone(url: string): Promise<void> {
  for (;;) {
    const others = await asked(
      url,
      "select pid from pg_stat_activity where datname = current_database() and backend_type = 'client backend' and pid <> pg_backend_pid()",
    );
    if (others.length === 0) return;
    await sleep(20);
  }
}

/** One question on a connection of its own. */
export async function asked(
  url: string,
  sql: string,
  values: readonly unknown[] = [],
): Promise<Record<string, unknown>[]> {
  // As the holder: where there is one role alone, the wall stands before it too.
  const connectionString = standingUrl(url, "holder");
  const client = new pg.Client({ connectionString, connectionTimeoutMillis: 5000 });
  client.on("error", () => undefined);
  try {
    await client.connect();
    return (await client.query(sql, [...values])).rows;
  } finally {
    await client.end().catch(() => undefined);
  }
}

function childrenOf(parent: number): number[] {
  return readdirSync("/proc")
    .map(Number)
    .filter((pid) => pid > 0 && parentOf(pid) === parent);
}

function end(pid: number): void {
  try {
    process.kill(pid, "SIGKILL");
  } catch {
    // It has ended by itself meanwhile.
  }
}
