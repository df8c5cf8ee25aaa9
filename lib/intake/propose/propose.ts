import { type TableName, tables } from "@/lib/records/tables";
import { columnsRead } from "../mapping/fits";
import type { Mapping, TableFeed } from "../mapping/mapping";
import type { Recognised } from "../recognise/recognised";
import { columnsByName } from "./columns-by-name";
import { stepFeeds } from "./propose-steps";
import { proposedTable } from "./propose-table";
import { fieldsLookedFor } from "./table-fields";

/** A mapping as far as names and contents of the columns tell it. */
export type Proposal = {
  readonly mapping: Mapping;
  /** Why a field is fed as it is, and what is still to settle, by "table field". */
  readonly reasons: Readonly<Record<string, string>>;
};

/** Proposes a mapping; nothing is guessed: what two readings fit is left open, and required fields may be missing. */
export function propose(recognised: Recognised, name: string): Proposal {
  const { columns, layout } = recognised;
  const reasons: Record<string, string> = {};
  const feeds: TableFeed[] = [];
  for (const table of Object.keys(fieldsLookedFor) as TableName[]) {
    const found = proposedTable(table, columns);
    if (!found) continue;
    feeds.push(found.feed);
    for (const [field, why] of Object.entries(found.why)) reasons[`${table} ${field}`] = why;
  }
  const visit = columnsByName("sessions", ["session_id", "practice"], columns);
  for (const { feed, why } of stepFeeds(columns, visit)) {
    feeds.push(feed);
    reasons["steps status"] ??= why;
  }
  return {
    reasons,
    mapping: {
      format: "canal-audit-mapping-1",
      name: name.replace(/\.[a-z0-9]+$/i, "").slice(0, 80) || "New mapping",
      file: layout,
      columns: columns.map((column) => column.name),
      tables: feeds.length > 0 ? feeds : [{ table: "sessions", fields: {} }],
    },
  };
}

/** The required fields that nothing feeds, by table. */
export function missingFields({ tables: feeds }: Mapping): { table: TableName; field: string }[] {
  return feeds.flatMap(({ table, fields }) => {
    const also = Object.values(fields).flatMap((feed) =>
      "columns" in feed ? (feed.words ?? []).flatMap(({ also = {} }) => Object.keys(also)) : [],
    );
    return tables[table].columns
      .filter(({ name, required }) => required && !(name in fields) && !also.includes(name))
      .filter(({ name }) => !(name === "session_id" && "visit.at" in fields))
      .map(({ name }) => ({ table, field: name }));
  });
}

/** The columns that nothing reads. */
export function unusedColumns({ tables: feeds, columns }: Mapping): string[] {
  const read = new Set(feeds.flatMap(columnsRead));
  return columns.filter((name) => !read.has(name));
}
