import { Batched } from "../batched";
import { checkMisplaced, checkRow } from "../check-row";
import { fileAsItWas } from "../file-as-it-was";
import type { RawRow, RawSheet } from "../raw-row";
import { openFile } from "../recognise/open-file";
import type { Context, GoodRow, HeldRow, Sheet } from "../sheet";
import { UnreadableFile } from "../unreadable-file";
import { columnsNeeded, columnsRead } from "./fits";
import { rowMapper } from "./map-row";
import type { Mapping, TableFeed } from "./mapping";
import { alike } from "./words";

/**
 * The tables that a file of another system feeds, one after the other: the file is read once a table, so that memory does not
 * grow with it. A line that cannot be cut into cells is told once, in the first table.
 *
 * @throws UnreadableFile where the file is not what the mapping says, or lacks a column that it reads.
 */
export async function* readMapped(
  path: string,
  name: string,
  mapping: Mapping,
  context: Context,
): AsyncGenerator<Sheet> {
  const { zone } = mapping;
  const refuseChanged = await fileAsItWas(path, name);
  const here = zone ? { ...context, zoneOf: () => zone } : context;
  for (const [place, feed] of mapping.tables.entries()) {
    const raw = await openFile(path, name, mapping.file);
    if (!raw) throw new UnreadableFile(name, "it is empty; export it again, or leave it out.");
    try {
      refuseMissing(raw, mapping, name);
      yield {
        name: raw.name,
        table: feed.table,
        ignored: place === 0 ? unread(raw, mapping) : [],
        rows: new Batched(rowsOf(raw, mapping, feed, here, place === 0, refuseChanged)),
      };
    } finally {
      await raw.close();
    }
  }
}

async function* rowsOf(
  raw: RawSheet,
  mapping: Mapping,
  feed: TableFeed,
  context: Context,
  first: boolean,
  refuseChanged: () => Promise<void>,
): AsyncGenerator<Iterable<GoodRow | HeldRow>> {
  const map = rowMapper(mapping, feed, raw.header, context);
  for await (const rows of raw.rows.batches) yield checked(rows);
  await refuseChanged();

  function* checked(rows: Iterable<RawRow>): Generator<GoodRow | HeldRow> {
    for (const row of rows) {
      const place = { file: raw.name, line: row.line };
      if (row.misplaced) {
        // Any cell may stand under another column's name.
        if (first) yield checkMisplaced(feed.table, {}, place, row.troubles ?? []);
        continue;
      }
      const mapped = map(row);
      if (mapped)
        yield checkRow(feed.table, mapped.cells, place, context, mapped.troubles, mapped.match);
    }
  }
}

function refuseMissing(raw: RawSheet, mapping: Mapping, name: string): void {
  const has = new Set(raw.header.map(alike));
  const missing = columnsNeeded(mapping).filter((column) => !has.has(alike(column)));
  if (missing.length === 0) return;
  const columns = missing.map((column) => `"${column}"`).join(", ");
  throw new UnreadableFile(
    name,
    `the mapping "${mapping.name}" reads ${missing.length === 1 ? "the column" : "the columns"} ${columns}, which ${missing.length === 1 ? "is" : "are"} not in it; has the export changed?`,
  );
}

function unread(raw: RawSheet, mapping: Mapping): string[] {
  const read = new Set(mapping.tables.flatMap(columnsRead).map(alike));
  return raw.header.filter((name) => !read.has(alike(name)));
}
