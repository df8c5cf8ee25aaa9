import type { RecordsReach } from "@/lib/access/reach";
import { type TableName, tables } from "@/lib/records/tables";
import { pool } from "../database";
import { askedCount, askedParameters, askedWhere, type HeldAsked } from "./held-asked";

/** Rows held for one reason. */
export type HeldGroupRow = {
  readonly table: TableName;
  readonly kind: string;
  readonly column: string;
  /** What was found in the column; null where that differs from row to row: of moments, and of rows that stand in relation to others. */
  readonly found: string | null;
  readonly rows: number;
  readonly files: number;
};

/**
 * The reasons for which rows are held, those of most rows first, with how many reasons there are. A row with two wrong columns is in
 * two groups.
 */
export async function heldGroupsNow(
  reach: RecordsReach,
  asked: HeldAsked & { readonly limit: number; readonly offset: number },
): Promise<{ groups: HeldGroupRow[]; count: number }> {
  const { rows } = await pool().query<HeldGroupRow & { all: number }>(
    `select h.table_name as "table", h.kind, coalesce(r.reason ->> 'column', '') as column,
       case when h.kind = 'check' and not coalesce(r.reason ->> 'column' = any($${askedCount + 3}) and r.reason ->> 'found' <> '', false)
         then coalesce(r.reason ->> 'found', '') end as found,
       count(distinct h.id)::int as rows, count(distinct h.file_id)::int as files, count(*) over ()::int as "all"
     from held h left join lateral jsonb_array_elements(h.reasons) r (reason) on true
     where ${askedWhere} group by 1, 2, 3, 4
     order by 5 desc, 1, 2, 3, 4 limit $${askedCount + 1} offset $${askedCount + 2}`,
    [...askedParameters(reach.practices, asked), asked.limit, asked.offset, moments],
  );
  return { groups: rows.map(({ all: _, ...group }) => group), count: rows[0]?.all ?? 0 };
}

/** Columns whose cells are seldom alike. */
const moments = [
  ...new Set(
    Object.values(tables).flatMap(({ columns }) =>
      columns.filter(({ type }) => type === "instant" || type === "day").map(({ name }) => name),
    ),
  ),
];
