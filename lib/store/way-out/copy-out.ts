import type { Readable } from "node:stream";
import { to as copyTo } from "pg-copy-streams";
import type { RecordsReach } from "@/lib/access/reach";
import { type TableName, tableNames } from "@/lib/records/tables";
import { pool } from "../database";
import { practicesWithin } from "../records/practices";
import { rowsAsWritten } from "./rows-as-written";

/** The practices of a reach by time zone: local days of each are those of its zone. */
export async function practicesByZone(
  reach: RecordsReach,
  only?: string,
): Promise<Map<string, string[]>> {
  const zones = new Map<string, string[]>();
  for (const { code, zone } of await practicesWithin(reach))
    if (only === undefined || code === only) zones.set(zone, [...(zones.get(zone) ?? []), code]);
  return zones;
}

/**
 * Everything that practices have as CSV files of the record format, one a table, as of one moment.
 *
 * @param practices codes, all within the reach
 * @param write takes the rows of a table, its header first, as a stream
 */
export async function copyOut(
  reach: RecordsReach,
  practices: readonly string[],
  write: (table: TableName, rows: Readable) => Promise<void>,
): Promise<void> {
  const within = reach.practices;
  if (within !== null && practices.some((code) => !within.includes(code)))
    throw new Error("a practice lies outside the reach");
  const codes = practices.map((code) => `'${code.replaceAll("'", "''")}'`).join(", ");
  const client = await pool().connect();
  try {
    await client.query("begin transaction isolation level repeatable read read only");
    for (const table of tableNames) {
      const rows = rowsAsWritten(table, `array[${codes}]::text[]`);
      await write(
        table,
        client.query(copyTo(`copy (${rows}) to stdout with (format csv, header)`)),
      );
    }
    await client.query("commit");
    client.release();
  } catch (trouble) {
    client.release(true);
    throw trouble;
  }
}
