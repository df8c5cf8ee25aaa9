import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import type { TableName } from "@/lib/records/tables";
import { changing } from "../import/changing";
import { publish } from "../import/publish";
import { type BenchRow, benchRow } from "./bench-rows";
import { askedParameters, askedWhere, type HeldAsked } from "./held-asked";
import { keepMended } from "./keep-mended";
import { heldNow, type MendResult, resultOf } from "./mend-result";
import type { Mending, Remake } from "./mending";
import { stagedValues } from "./staged-values";

/** Rows made anew at a time. */
const batch = 2000;

/**
 * Mends held rows: each is made anew, judged as a row that has just been read, and accepted or held for what stands in the way now. The
 * held rows stay as they were read, with the act that changed them. One transaction, one change of the records at a time.
 *
 * @param asked which of the rows held now
 */
export async function mendRows(
  reach: RecordsReach,
  asked: HeldAsked,
  remake: Remake,
  how: Mending,
): Promise<MendResult> {
  let result: MendResult | undefined;
  try {
    return await changing(async (client) => {
      result = await mend(client, reach, asked, remake, how);
      if (how.tryOnly || result.rows === 0) throw new OnlyTried();
      return result;
    });
  } catch (end) {
    if (end instanceof OnlyTried && result) return result;
    throw end;
  }
}

/** Ends the transaction so that nothing of it stays. */
class OnlyTried extends Error {}

async function mend(
  client: pg.ClientBase,
  reach: RecordsReach,
  asked: HeldAsked,
  remake: Remake,
  how: Mending,
): Promise<MendResult> {
  await client.query(`
    create temp table mending (held_id bigint, cells jsonb, made jsonb, good boolean, practice text, session_id text, canal text, key text,
      values jsonb, reasons jsonb) on commit drop`);
  const { rows: chosen } = await client.query<{ id: string }>(
    `select h.id::text from held h where ${askedWhere} order by h.file_id, h.line, h.id for update`,
    askedParameters(reach.practices, { ...asked, table: how.table, state: "held" }),
  );
  for (let start = 0; start < chosen.length; start += batch) {
    const ids = chosen.slice(start, start + batch).map((row) => row.id);
    await makeAnew(client, how.table, ids, remake);
  }
  const heldBefore = await heldNow(client);
  const mendId = await keepMended(client, reach, how);
  await publish(client, { zone: how.zone, practices: reach.practices });
  return resultOf(client, mendId, heldBefore, how);
}

async function makeAnew(
  client: pg.ClientBase,
  table: TableName,
  ids: readonly string[],
  remake: Remake,
) {
  const { rows } = await client.query<BenchRow>(`${benchRow} where h.id = any($1)`, [ids]);
  const made = rows.flatMap((row) => {
    const anew = remake(row);
    if (!anew) return [];
    return [
      { held_id: row.id, cells: anew.before, made: anew.cells, ...stagedValues(table, anew.row) },
    ];
  });
  await client.query(
    "insert into mending select * from jsonb_populate_recordset(null::mending, $1)",
    // jsonb takes no NUL.
    [JSON.stringify(made).replaceAll("\\u0000", "\\ufffd")],
  );
}
