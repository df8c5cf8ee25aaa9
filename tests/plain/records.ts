import type { Values } from "@/lib/records/column";
import { type TableName, tableNames } from "@/lib/records/tables";

/** What can be told of a held row: its table, and of its key what could be read. Whole tooth: no canal. */
export type HeldRow = {
  readonly table: TableName;
  readonly practice?: string;
  readonly session_id?: string;
  readonly canal?: string;
};

/** Accepted rows by table, the held ones, and the IANA time zone of every practice. */
export type Records = { [table in TableName]: Values[] } & {
  held: HeldRow[];
  zones: Record<string, string>;
};

/** Records without a row. */
export function noRecords(zones: Record<string, string>): Records {
  const empty = Object.fromEntries(tableNames.map((table) => [table, []]));
  return { ...(empty as unknown as Record<TableName, Values[]>), held: [], zones };
}
