import pg from "pg";
import type { Home } from "./open-home";

const LOG = "public.log_lines";

/** The address of the role that owns the log: the keeper in the home's database, else the only role there is. */
export function logOwnerUrl(home: Pick<Home, "url" | "keeperUrl">): string {
  if (!home.keeperUrl) return home.url;
  const address = new URL(home.keeperUrl);
  address.pathname = new URL(home.url).pathname;
  return address.href;
}

/**
 * Takes the log away from the role that the application uses: the keeper owns the table, its functions and the database (whose owner
 * may drop any table), and the role may only read and add lines. Where DATABASE_URL names another server there is no keeper, and
 * the triggers alone guard it. Done after every migration; the second time it finds it done.
 */
export async function keepLog(home: Pick<Home, "url" | "keeperUrl">): Promise<void> {
  if (!home.keeperUrl) return;
  const { username: role, pathname } = new URL(home.url);
  const client = new pg.Client({ connectionString: logOwnerUrl(home) });
  await client.connect();
  try {
    const { rows } = await client.query<{ kept: boolean }>(
      `select t.relowner = r.oid and d.datdba = r.oid as kept from pg_class t, pg_database d, pg_roles r
       where t.oid = to_regclass('${LOG}') and d.datname = current_database() and r.rolname = current_user`,
    );
    if (rows.length === 0 || rows[0]?.kept) return;
    const database = client.escapeIdentifier(pathname.slice(1));
    const app = client.escapeIdentifier(decodeURIComponent(role));
    await client.query(`
      begin;
      alter database ${database} owner to current_user;
      grant connect, create, temporary on database ${database} to ${app};
      grant usage, create on schema public to ${app};
      alter table ${LOG} owner to current_user;
      alter function public.log_lines_chain() owner to current_user;
      alter function public.log_lines_stay() owner to current_user;
      revoke all on ${LOG} from ${app}, public;
      grant select, insert on ${LOG} to ${app};
      commit`);
  } finally {
    await client.end();
  }
}
