import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type pg from "pg";
import { from as copyFrom } from "pg-copy-streams";
import type { Value, Values } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
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

/**
 * Copies the rows of one file into staging, a bounded number at a time; tells how many there were and how many are held. While
 * the database takes some in, the next are read.
 */
export async function stage(
  client: pg.ClientBase,
  table: TableName,
  fileId: number,
  rows: AsyncIterable<StagedRow>,
  onRows: (count: number, held: number) => Promise<void>,
): Promise<void> {
  const lines = linesOf(table, fileId);
  const held = heldLinesOf(table, fileId);
  let good: string[] = [];
  let bad: string[] = [];
  let taking = Promise.resolve();
  const take = async () => {
    const [some, others] = [good, bad];
    [good, bad] = [[], []];
    await taking;
    taking = copy(client, lines.into, some)
      .then(() => copy(client, held.into, others))
      .then(() => onRows(some.length + others.length, others.length));
    // What goes wrong is thrown where it is waited for.
    taking.catch(() => undefined);
  };
  for await (const row of rows) {
    // Text at once: rows that wait as objects outlive the collector's nursery.
    if ("values" in row) good.push(lines.write(row));
    else bad.push(held.write(row));
    if (good.length + bad.length >= atATime) await take();
  }
  await take();
  await taking;
}

const atATime = 5000;

/** Where rows go, and each of them as a line of COPY's text format. */
type Lines<Row> = { readonly into: string; write(row: Row): string };

function linesOf(table: TableName, fileId: number): Lines<CheckedRow> {
  const hangs = hangsOnVisit(table);
  const columns = [
    ...(hangs ? ["practice", "session_id"] : []),
    ...storedColumns(table).map((column) => column.name),
  ];
  // An empty cell of an optional key is the empty text.
  const empty = columns.map((name) =>
    tables[table].columns.some((one) => one.name === name && one.key && !one.required) ? "" : "\\N",
  );
  const first = ["file_id", "line", "fields", "held_id", ...(hangs ? ["match"] : [])];
  return {
    into: `staged_${table} (${list([...first, ...columns])})`,
    write: ({ line, values, match }) => {
      let text = `${fileId}\t${line}\t${fieldsOf(table, values)}\t\\N`;
      if (hangs) text += `\t${match ? cell(json(match)) : "\\N"}`;
      for (let place = 0; place < columns.length; place += 1) {
        const value = values[columns[place] ?? ""];
        text += `\t${value === undefined ? empty[place] : cell(value)}`;
      }
      return `${text}\n`;
    },
  };
}

function heldLinesOf(table: TableName, fileId: number): Lines<HeldAsRead> {
  return {
    into: "staged_held",
    write: ({ line, key, practice, session_id, canal, raw, reasons }) => {
      const cells = [table, fileId, line, key, practice, session_id, canal].map(cell);
      return `${[...cells, cell(json(raw)), cell(json(reasons))].join("\t")}\n`;
    },
  };
}

/** A bit for each column the row bears, so that undoing one import keeps what another one bore. */
export function fieldsOf(table: TableName, values: Values): number {
  return tables[table].columns.reduce(
    (bits, column, place) => (values[column.name] === undefined ? bits : bits + 2 ** place),
    0,
  );
}

async function copy(client: pg.ClientBase, into: string, lines: readonly string[]) {
  if (lines.length === 0) return;
  // In one piece: each piece is a packet of its own.
  await pipeline(
    Readable.from([Buffer.from(lines.join(""))], { objectMode: false }),
    client.query(copyFrom(`copy ${into} from stdin`)),
  );
}

/** A value in COPY's text format. */
function cell(value: Value | undefined): string {
  if (value === undefined) return "\\N";
  if (typeof value !== "string") return String(value);
  return marks.test(value) ? value.replace(everyMark, (mark) => escapes[mark] ?? mark) : value;
}

function json(value: unknown): string {
  // jsonb takes no NUL.
  return JSON.stringify(value).replaceAll("\\u0000", "\\ufffd");
}

const marks = /[\\\t\n\r]/;
const everyMark = /[\\\t\n\r]/g;
const escapes: Record<string, string> = { "\\": "\\\\", "\t": "\\t", "\n": "\\n", "\r": "\\r" };
