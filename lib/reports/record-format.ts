import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { type ColumnDescription, describeColumns } from "@/lib/intake/describe-columns";
import { tableSchema } from "@/lib/intake/table-schema";
import { exampleCsv, templateCsv } from "@/lib/intake/templates";
import { type TableName, tableNames, tables } from "@/lib/records/tables";

export type FormatTable = {
  readonly name: TableName;
  readonly says: string;
  readonly parent: TableName | undefined;
  readonly columns: readonly ColumnDescription[];
  /** Files to download: what each is, and its address. */
  readonly files: readonly { readonly words: string; readonly address: string }[];
};

/** What each table and column of the record format holds. @throws Refused */
export function recordFormat(viewer: Viewer): readonly FormatTable[] {
  recordsReach(viewer);
  return tableNames.map((name) => ({
    name,
    says: tables[name].says,
    parent: tables[name].parent,
    columns: describeColumns(name),
    files: [
      { words: "Blank template (CSV)", address: `/api/records/format/${name}.csv` },
      { words: "With one example row (CSV)", address: `/api/records/format/${name}-example.csv` },
      { words: "Table Schema (JSON)", address: `/api/records/format/${name}.json` },
    ],
  }));
}

export type FormatFile = { readonly text: string; readonly type: string };

/** A file of the format by its name: sessions.csv, sessions-example.csv, sessions.json; null where there is none. @throws Refused */
export function formatFile(viewer: Viewer, file: string): FormatFile | null {
  recordsReach(viewer);
  const [, base, example, ending] = /^([a-z]+)(-example)?\.(csv|json)$/.exec(file) ?? [];
  const table = tableNames.find((name) => name === base);
  if (!table) return null;
  if (ending === "json") {
    return example
      ? null
      : {
          text: `${JSON.stringify(tableSchema(table), null, 2)}\n`,
          type: "application/json; charset=utf-8",
        };
  }
  return {
    text: example ? exampleCsv(table) : templateCsv(table),
    type: "text/csv; charset=utf-8; header=present",
  };
}
