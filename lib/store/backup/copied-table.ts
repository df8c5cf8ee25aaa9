import { createHash } from "node:crypto";
import type pg from "pg";
import { to as copyTo } from "pg-copy-streams";
import type { BackedTable } from "./manifest";
import { copyOut, type StoredTable } from "./stored-tables";

/** Bytes of a table in one entry of the archive. */
const PART = 4 * 2 ** 20;
const NEWLINE = 10;

/** The rows of a table in parts of bounded size; answers what the manifest says of it. */
export async function* copiedTable(
  client: pg.ClientBase,
  table: StoredTable,
): AsyncGenerator<Buffer, BackedTable> {
  const hash = createHash("sha256");
  let rows = 0;
  let waiting: Buffer[] = [];
  let length = 0;
  for await (const piece of client.query(copyTo(copyOut(table)))) {
    const bytes = piece as Buffer;
    hash.update(bytes);
    // In COPY's text format a newline ends a row and stands nowhere else.
    for (const byte of bytes) if (byte === NEWLINE) rows += 1;
    waiting.push(bytes);
    length += bytes.length;
    if (length < PART) continue;
    yield Buffer.concat(waiting, length);
    waiting = [];
    length = 0;
  }
  if (length > 0) yield Buffer.concat(waiting, length);
  return { name: table.name, columns: [...table.columns], rows, sha256: hash.digest("hex") };
}

/** What a table holds now, told as the manifest tells it. */
export async function tableNow(client: pg.ClientBase, table: StoredTable): Promise<BackedTable> {
  const parts = copiedTable(client, table);
  for (;;) {
    const next = await parts.next();
    if (next.done) return next.value;
  }
}
