import { createReadStream, createWriteStream } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import pg from "pg";
import { from as copyFrom, to as copyTo } from "pg-copy-streams";
import { tableNames } from "@/lib/records/tables";
import { withHome } from "@/lib/reports/with-home";
import { migrate } from "@/lib/store/home/migrate";
import { scratchDatabase } from "@/lib/store/home/scratch-database";

export type CopyRun = { readonly rows: number; readonly seconds: number };

/** What the rows refer to; in before the clock runs. */
const before = ["practices"];

/**
 * Copies the accepted rows of a home, written out as COPY writes them, into the same empty tables with the same indexes in another
 * database of the same server, a table after the other.
 */
export async function bareCopy(home: string): Promise<CopyRun> {
  process.env.CANAL_AUDIT_HOME = home;
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-copy-"));
  try {
    return await withHome(async ({ url, keeperUrl }) => {
      const scratch = await scratchDatabase(keeperUrl ?? url);
      try {
        await migrate(scratch.url);
        const [from, into] = [url, scratch.url].map(
          (connectionString) => new pg.Client({ connectionString }),
        ) as [pg.Client, pg.Client];
        await Promise.all([from.connect(), into.connect()]);
        await into.query("set session_replication_role = replica");
        for (const table of [...before, ...tableNames])
          await pipeline(
            from.query(copyTo(`copy "${table}" to stdout`)),
            createWriteStream(join(folder, table)),
          );
        for (const table of before) await copyIn(into, folder, table);
        await into.query("set session_replication_role = origin");
        const started = performance.now();
        for (const table of tableNames) await copyIn(into, folder, table);
        const seconds = (performance.now() - started) / 1000;
        let rows = 0;
        for (const table of tableNames)
          rows += Number((await into.query(`select count(*) from "${table}"`)).rows[0].count);
        await Promise.all([from.end(), into.end()]);
        return { rows, seconds };
      } finally {
        await scratch.drop();
      }
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function copyIn(client: pg.Client, folder: string, table: string): Promise<void> {
  await pipeline(
    createReadStream(join(folder, table), { highWaterMark: 1 << 20 }),
    client.query(copyFrom(`copy "${table}" from stdin`)),
  );
}
