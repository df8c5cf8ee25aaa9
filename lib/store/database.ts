import { PrismaPg } from "@prisma/adapter-pg";
import pg from "pg";
import { PrismaClient } from "@/prisma/client/client";
import { standingUrl } from "./wall/standing-url";
import { walledPool } from "./wall/walled-pool";

/** One pool and one client a process; Next reloads modules in development, so they hang on globalThis. */
type Database = { url: string; pool: pg.Pool; prismaPool: pg.Pool; prisma: PrismaClient };
const kept = globalThis as { canalAuditDatabase?: Database };

/** The pool that SQL of the figures and of imports runs on. */
export function pool(): pg.Pool {
  return database().pool;
}

/** The Prisma client, for people, settings, imports and other small things. */
export function prisma(): PrismaClient {
  return database().prisma;
}

/** Ends all connections; a later call connects anew, to what DATABASE_URL then says. */
export async function disconnect(): Promise<void> {
  const open = kept.canalAuditDatabase;
  kept.canalAuditDatabase = undefined;
  await open?.prisma.$disconnect();
  await open?.prismaPool.end();
  await open?.pool.end();
}

function database(): Database {
  const url = process.env.DATABASE_URL;
  // An undefined connection string would silently mean 127.0.0.1:5432.
  if (!url) throw new Error("DATABASE_URL is not set: the home is not open.");
  if (kept.canalAuditDatabase?.url !== url) kept.canalAuditDatabase = open(url);
  return kept.canalAuditDatabase;
}

/** Requests are asked as a role that owns nothing, where there is one (lib/store/home); the holder asks as the owner. */
function open(url: string): Database {
  const viewers = standingUrl(process.env.DATABASE_URL_OF_VIEWERS || url, "nobody");
  const walled = () =>
    walledPool(connections(viewers, 8), connections(standingUrl(url, "holder"), 4));
  // Apart, so that whoever holds a connection of the one never waits for one of the same.
  const [pool, prismaPool] = [walled(), walled()];
  const client = new PrismaClient({ adapter: new PrismaPg(prismaPool) });
  return { url, pool, prismaPool, prisma: client };
}

function connections(url: string, max: number): pg.Pool {
  const made = new pg.Pool({ connectionString: url, max });
  // A connection that dies while idle must not end the process; the next query says what is wrong.
  made.on("error", () => undefined);
  // The same for one that dies while somebody holds it: what they asked of it fails, and says so.
  made.on("connect", (client) => client.on("error", () => undefined));
  return made;
}
