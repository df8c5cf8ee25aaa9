import pg from "pg";
import { wallSql } from "../wall/wall-sql";
import { logOwnerUrl } from "./keep-log";
import type { Home } from "./open-home";

/**
 * Raises the wall in the database: policies of row-level security on every table that holds what is somebody's, and what the viewers'
 * role may do. Done after every migration, in one transaction; the second time it finds it done. Until it is done that role sees nothing.
 */
export async function raiseWall(
  home: Pick<Home, "url" | "keeperUrl" | "viewersUrl">,
): Promise<void> {
  const [owner, viewers] = [roleOf(home.url), roleOf(home.viewersUrl)];
  const { sql, digest } = wallSql(owner, viewers === owner ? null : viewers);
  const client = new pg.Client({ connectionString: logOwnerUrl(home) });
  await client.connect();
  try {
    if (await isRaised(client, digest)) return;
    await client.query("begin");
    await client.query("select pg_advisory_xact_lock($1)", [RAISING]);
    if (!(await isRaised(client, digest))) await client.query(sql);
    await client.query("commit");
  } finally {
    await client.end();
  }
}

/** Any number that nothing else of the project locks. */
const RAISING = 20_261_129;

async function isRaised(client: pg.Client, digest: string): Promise<boolean> {
  const { rowCount } = await client.query(
    `select from pg_policy where polrelid = to_regclass('public.sessions') and polname = 'reads' and obj_description(oid, 'pg_policy') = $1`,
    [digest],
  );
  return rowCount === 1;
}

function roleOf(url: string): string {
  return decodeURIComponent(new URL(url).username);
}
