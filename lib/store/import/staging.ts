import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type pg from "pg";
import { from as copyFrom } from "pg-copy-streams";
import type { Values } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import type { Behind } from "./behind";
import { CopyText, cell, json } from "./copy-text";
import type { Spool, Spooled } from "./spool";
import { hangsOnVisit, list, storedColumns } from "./stored-columns";

/** A row that the checks held. */
export type HeldAsRead = {
  readonly line: number;
  readonly key: string;
  readonly practice?: string;
  readonly session_id?: string;
  readonly canal?: string;
  readonly raw: Readonly<Record<string, string>>;
  readonly reasons: readonly Reason[];
};
/** A row that the checks found right; `match` finds the visit of one that names none. */
export type CheckedRow = {
  readonly line: number;
  readonly values: Values;
  readonly match?: Readonly<Record<string, string | number | undefined>>;
};
export type StagedRow = CheckedRow | HeldAsRead;

/** Makes this connection's staging tables; they are temporary, so an import that dies leaves nothing. */
export async function makeStaging(client: pg.ClientBase): Promise<void> {
  // Of this connection alone, where it has had no temporary table yet: staged rows stay in memory as far as they fit.
  await client.query(
    "select set_config('temp_buffers', '96MB', false) where pg_my_temp_schema() = 0; set work_mem = '96MB'",
  );
  for (const table of tableNames) {
    const columns = storedColumns(table).map((column) => `"${column.name}" ${column.type}`);
    const place = hangsOnVisit(table)
      ? "practice text, session_id text, match jsonb, candidates text, candidate_visits jsonb,"
      : "";
    await client.query(
      `create temp table staged_${table} (file_id int, line int, fields int, held_id bigint, ${place} ${columns.join(", ")})`,
    );
  }
  await client.query(
    `create temp table staged_held (table_name text, file_id int, line int, key text, practice text, session_id text, canal text, raw jsonb, reasons jsonb)`,
  );
}

/** The connection's work, and where rows wait for it when they are too many for the memory. */
export type Later = { readonly behind: Behind; readonly spool: Spool };

/**
 * Reads the rows of one file and leaves it to the connection's work to copy them into staging, a bounded number at a time; tells how many
 * were copied and how many of those are held. Reading goes on while the connection is at work with what was read.
 *
 * @param rows some at a time, as each step costs a promise
 */
export async function stage(
  client: pg.ClientBase,
  { behind, spool }: Later,
  { table, fileId }: { readonly table: TableName; readonly fileId: number },
  rows: AsyncIterable<Iterable<StagedRow>>,
  onRows: (count: number, held: number) => Promise<void>,
): Promise<void> {
  const [goodRows, badRows] = [copiedRows(table, fileId), copiedHeldRows(table, fileId)];
  let [good, bad] = [new CopyText(), new CopyText()];
  const take = async () => {
    const [count, held] = [good.lines + bad.lines, bad.lines];
    const [goodBytes, badBytes] = [
      await waiting(good, behind, spool),
      await waiting(bad, behind, spool),
    ];
    [good, bad] = [new CopyText(), new CopyText()];
    await behind.add(goodBytes.inMemory + badBytes.inMemory, async () => {
      await copy(client, goodRows.into, goodBytes);
      await copy(client, badRows.into, badBytes);
      await onRows(count, held);
    });
  };
  for await (const batch of rows)
    for (const row of batch) {
      // Bytes at once: rows that wait as objects, or as texts put together, outlive the collector's nursery.
      if ("values" in row) good.add(goodRows.cells(row));
      else bad.add(badRows.cells(row));
      if (good.lines + bad.lines >= atATime) await take();
    }
  await take();
}

const atATime = 10_000;

/** Where rows go, and the cells of each in COPY's text format. */
type Copied<Row> = { readonly into: string; cells(row: Row): string[] };

function copiedRows(table: TableName, fileId: number): Copied<CheckedRow> {
  const hangs = hangsOnVisit(table);
  const columns = tables[table].columns.map(({ name, key, required }, place) => ({
    name,
    bit: 2 ** place,
    // An empty cell of an optional key is the empty text.
    empty: key && !required ? "" : "\\N",
  }));
  const first = ["fields", "file_id", "line", ...(hangs ? ["match"] : [])];
  const file = String(fileId);
  return {
    into: `staged_${table} (${list([...first, ...columns.map(({ name }) => name)])})`,
    cells: ({ line, values, match }) => {
      const cells = ["", file, String(line)];
      if (hangs) cells.push(match ? cell(json(match)) : "\\N");
      let fields = 0;
      for (const { name, bit, empty } of columns) {
        const value = values[name];
        if (value !== undefined) fields += bit;
        cells.push(value === undefined ? empty : cell(value));
      }
      cells[0] = String(fields);
      return cells;
    },
  };
}

function copiedHeldRows(table: TableName, fileId: number): Copied<HeldAsRead> {
  return {
    into: "staged_held",
    cells: ({ line, key, practice, session_id, canal, raw, reasons }) => [
      ...[table, fileId, line, key, practice, session_id, canal].map(cell),
      ...[cell(json(raw)), cell(json(reasons))],
    ],
  };
}

/** A bit for each column the row bears, so that undoing one import keeps what another one bore. */
export function fieldsOf(table: TableName, values: Values): number {
  return tables[table].columns.reduce(
    (bits, column, place) => (values[column.name] === undefined ? bits : bits + 2 ** place),
    0,
  );
}

/** What is to be copied, and how much memory it takes until then. */
type Waiting = { readonly inMemory: number; bytes(): Promise<Buffer> };

async function waiting(text: CopyText, behind: Behind, spool: Spool): Promise<Waiting> {
  const spooled = text.lines > 0 && behind.isFull ? await spool.put(text.bytes()) : null;
  return spooled ? onDisk(spool, spooled) : inMemory(text);
}

// Apart, as functions made beside each other keep all that one of them looks at.
function onDisk(spool: Spool, spooled: Spooled): Waiting {
  return { inMemory: 0, bytes: () => spool.take(spooled) };
}

function inMemory(text: CopyText): Waiting {
  return { inMemory: text.size, bytes: async () => text.bytes() };
}

async function copy(client: pg.ClientBase, into: string, waiting: Waiting) {
  const bytes = await waiting.bytes();
  if (bytes.length === 0) return;
  // In one piece: each piece is a packet of its own.
  await pipeline(
    Readable.from([bytes], { objectMode: false }),
    client.query(copyFrom(`copy ${into} from stdin`)),
  );
}
