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

/** Copies the rows of one file into staging, a bounded number at a time; tells how many there were and how many are held. */
export async function stage(
  client: pg.ClientBase,
  table: TableName,
  fileId: number,
  rows: AsyncIterable<StagedRow>,
  onRows: (count: number, held: number) => Promise<void>,
): Promise<void> {
  let batch: StagedRow[] = [];
  for await (const row of rows) {
    batch.push(row);
    if (batch.length < 5000) continue;
    await onRows(batch.length, await copyBatch(client, table, fileId, batch));
    batch = [];
  }
  await onRows(batch.length, await copyBatch(client, table, fileId, batch));
}

async function copyBatch(
  client: pg.ClientBase,
  table: TableName,
  fileId: number,
  batch: readonly StagedRow[],
): Promise<number> {
  const good: string[] = [];
  const held: string[] = [];
  const place = hangsOnVisit(table) ? ["practice", "session_id"] : [];
  const match = (row: CheckedRow) => (row.match ? cell(json(row.match)) : "\\N");
  const names = storedColumns(table).map((column) => column.name);
  const optionalKeys = new Set(
    tables[table].columns
      .filter((column) => column.key && !column.required)
      .map((column) => column.name),
  );
  for (const row of batch) {
    if ("values" in row) {
      const cells = [...place, ...names].map((name) =>
        cell(row.values[name] ?? (optionalKeys.has(name) ? "" : undefined)),
      );
      const matched = place.length > 0 ? [match(row)] : [];
      good.push(
        `${[fileId, row.line, fieldsOf(table, row.values), "\\N", ...matched, ...cells].join("\t")}\n`,
      );
    } else {
      const cells = [table, fileId, row.line, row.key, row.practice, row.session_id, row.canal].map(
        cell,
      );
      held.push(`${[...cells, cell(json(row.raw)), cell(json(row.reasons))].join("\t")}\n`);
    }
  }
  const columns = [
    "file_id",
    "line",
    "fields",
    "held_id",
    ...(place.length > 0 ? ["match"] : []),
    ...place,
    ...names,
  ];
  await copy(client, `staged_${table} (${list(columns)})`, good);
  await copy(client, "staged_held", held);
  return held.length;
}

/** A bit for each column the row bears, so that undoing one import keeps what another one bore. */
export function fieldsOf(table: TableName, values: Values): number {
  return tables[table].columns.reduce(
    (bits, column, place) => (values[column.name] === undefined ? bits : bits + 2 ** place),
    0,
  );
}

async function copy(client: pg.ClientBase, into: string, lines: string[]) {
  if (lines.length === 0) return;
  await pipeline(
    Readable.from(lines, { objectMode: false }),
    client.query(copyFrom(`copy ${into} from stdin`)),
  );
}

/** A value in COPY's text format. */
function cell(value: Value | undefined): string {
  if (value === undefined) return "\\N";
  if (typeof value !== "string") return String(value);
  return value.replace(/[\\\t\n\r]/g, (mark) => escapes[mark] ?? mark);
}

function json(value: unknown): string {
  // jsonb takes no NUL.
  return JSON.stringify(value).replaceAll("\\u0000", "\\ufffd");
}

const escapes: Record<string, string> = { "\\": "\\\\", "\t": "\\t", "\n": "\\n", "\r": "\\r" };
