import { once } from "node:events";
import { createWriteStream, type WriteStream } from "node:fs";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { stringify } from "csv-stringify/sync";
import { dayAfter } from "@/lib/records/period";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { cast } from "@/seed/cast";
import { type Extent, placeRows, visitRows } from "@/seed/make-practice";
import { noRows, type Row, type Rows } from "@/seed/rows";
import { practices } from "@/seed/scenario";

/**
 * The scenario's practices stand four times, told apart by a number. Fifteen of its codes are at work at a time, and here each is
 * a person of its own, so that a quarter has sixty clinicians.
 */
export const copies = 4;
/** The last day of the records, and the first of five years before it. */
export const lastDay = "2026-09-30";
const fiveYears = 1826;
/** Canals of one copy of the scenario in five years at its own pace (counted). */
const usualCanals = 22_000;

export type RecordFile = { readonly path: string; readonly name: string };

/**
 * Writes five years of records with about so many canals, by the scenario's own generator made busier: one CSV file a table.
 * @returns the files, and how many rows and canals they hold.
 */
export async function writeRecords(folder: string, canals: number) {
  await mkdir(folder, { recursive: true });
  const times = canals / copies / usualCanals;
  const extent: Extent = {
    first: dayAfter(lastDay, -fiveYears),
    last: lastDay,
    times,
    slots: Math.max(4, Math.ceil(times * 3)),
  };
  const out = new Outputs(folder);
  for (let copy = 1; copy <= copies; copy += 1) {
    for (const practice of practices) {
      await out.add(placeRows(practice, extent), copy);
      for (const rows of visitRows(practice, extent)) await out.add(rows, copy);
    }
  }
  return out.end();
}

/** Cells that name something of one practice, and so carry the number of its copy. */
const named = new Set(
  "practice chair clinician supervisor person code patient session_id case_id instrument_id steriliser_cycle done_by".split(
    " ",
  ),
);

class Outputs {
  private readonly streams = new Map<TableName, WriteStream>();
  private waiting = noRows();
  private held = 0;
  private readonly counts = Object.fromEntries(tableNames.map((name) => [name, 0]));
  constructor(private readonly folder: string) {}

  async add(rows: Rows, copy: number): Promise<void> {
    for (const table of tableNames)
      for (const row of rows[table]) {
        this.waiting[table].push(numbered(table === "people" ? oneCodeEach(row) : row, copy));
        this.held += 1;
      }
    if (this.held >= 20_000) await this.flush();
  }

  async end() {
    await this.flush();
    for (const stream of this.streams.values()) {
      stream.end();
      await once(stream, "finish");
    }
    const files = [...this.streams.keys()].map((table) => ({
      path: join(this.folder, `${table}.csv`),
      name: `${table}.csv`,
    }));
    const rows = Object.values(this.counts).reduce((total, count) => total + count, 0);
    return { files, rows, canals: this.counts.canals ?? 0 };
  }

  private async flush(): Promise<void> {
    for (const table of tableNames) {
      const rows = this.waiting[table];
      if (rows.length === 0) continue;
      this.counts[table] = (this.counts[table] ?? 0) + rows.length;
      const columns = tables[table].columns.map(({ name }) => name);
      const stream = this.streams.get(table) ?? this.begin(table, columns);
      if (!stream.write(stringify(rows, { columns }))) await once(stream, "drain");
    }
    this.waiting = noRows();
    this.held = 0;
  }

  private begin(table: TableName, columns: string[]): WriteStream {
    const stream = createWriteStream(join(this.folder, `${table}.csv`));
    stream.write(`${columns.join(",")}\n`);
    this.streams.set(table, stream);
    return stream;
  }
}

/** Who works at two practices of the scenario is two people. */
function oneCodeEach(row: Row): Row {
  const first = cast.find(({ person }) => person === row.person);
  return first && first.practice !== row.practice
    ? { ...row, person: `${row.person}-${row.practice}` }
    : row;
}

function numbered(row: Row, copy: number): Row {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [
      name,
      value !== undefined && named.has(name) ? `${value}-${copy}` : value,
    ]),
  );
}
