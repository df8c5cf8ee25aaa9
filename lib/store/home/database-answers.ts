import pg from "pg";
import { HomeTrouble } from "./home-trouble";

const OLDEST = 15;

/**
 * Asks a database one question, to find out before anything else whether it is there.
 * @throws HomeTrouble where the address is none, nothing answers, it refuses, or it is older than 15. The
 * sentence never holds the password.
 */
export async function databaseAnswers(url: string): Promise<void> {
  const place = placeOf(url);
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  client.on("error", () => {});
  try {
    await client.connect();
    const found = await client.query("show server_version_num");
    const version = Math.floor(Number(found.rows[0].server_version_num) / 10_000);
    if (version < OLDEST) {
      throw new HomeTrouble(`${place} is PostgreSQL ${version}: ${OLDEST} or newer is needed.`);
    }
  } catch (error) {
    if (error instanceof HomeTrouble) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new HomeTrouble(
      `${place} does not let us in (${code === "ECONNREFUSED" ? "connection refused" : message || code}): start it or correct DATABASE_URL.`,
    );
  } finally {
    await client.end().catch(() => {});
  }
}

function placeOf(url: string): string {
  try {
    const { protocol, hostname, port, pathname, searchParams } = new URL(url);
    if (/^postgres(ql)?:$/.test(protocol)) {
      const host = decodeURIComponent(hostname) || searchParams.get("host") || "this machine";
      return `The database ${pathname.slice(1)} at ${host}:${port || 5432}`;
    }
  } catch {}
  throw new HomeTrouble(
    "DATABASE_URL is not an address of PostgreSQL: it begins with postgresql:// and names host and database.",
  );
}
