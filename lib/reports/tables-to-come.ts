import { extname } from "node:path";
import { readSheets } from "@/lib/intake/read-sheets";
import type { Context } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import type { TableName } from "@/lib/records/tables";
import type { KnownMapping } from "./how-to-read";

type File = { readonly path: string; readonly name: string };

/**
 * The table of each sheet that will be read, in their order; a file that turns out to hold none has none. Undefined where a workbook is
 * among the files, as its sheets are known once they are read.
 */
export async function tablesToCome(
  toRead: readonly { readonly source: File; readonly by?: KnownMapping }[],
  context: Context,
): Promise<TableName[] | undefined> {
  const tables: TableName[] = [];
  for (const { source, by } of toRead) {
    if (by) tables.push(...by.mapping.tables.map((feed) => feed.table));
    else if (extname(source.name).toLowerCase() === ".xlsx") return undefined;
    else tables.push(...(await tableOf(source, context)));
  }
  return tables;
}

async function tableOf(source: File, context: Context): Promise<TableName[]> {
  try {
    for await (const { table } of readSheets(source.path, source.name, context)) return [table];
  } catch (trouble) {
    if (!(trouble instanceof UnreadableFile)) throw trouble;
  }
  return [];
}
