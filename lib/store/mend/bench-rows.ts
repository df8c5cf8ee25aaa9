import type { RecordsReach } from "@/lib/access/reach";
import type { Value } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import { pool } from "../database";
import {
  askedCount,
  askedParameters,
  askedWhere,
  type HeldAsked,
  type HeldState,
} from "./held-asked";

/** A held row with what lies behind it. */
export type BenchRow = {
  readonly id: string;
  readonly table: TableName;
  readonly kind: string;
  readonly state: HeldState;
  readonly practice: string | null;
  readonly key: string;
  readonly file: string;
  readonly line: number;
  readonly importId: number;
  /** The mapping by which its file was read. */
  readonly mapping: string | null;
  readonly version: number | null;
  /** As read, the patient hashed. */
  readonly raw: Readonly<Record<string, string>>;
  /** What the checks made of it, where only its relation to other rows stands in the way. */
  readonly values: Readonly<Record<string, Value | null>> | null;
  /** Its cells as the latest mend made them; null where none did. */
  readonly mended: Readonly<Record<string, string>> | null;
  /** And what they were before it. */
  readonly mendedFrom: Readonly<Record<string, string>> | null;
  readonly reasons: readonly Reason[];
  readonly mendId: number | null;
  readonly settledBy: string | null;
  readonly settledAt: Date | null;
  readonly settledReason: string | null;
};

/** SQL: rows of the bench from `held h`, a condition to follow. */
export const benchRow = `select h.id::text, h.table_name as "table", h.kind, h.state, h.practice, h.key, f.name as file, h.line,
  f.import_id as "importId", f.mapping, f.version, h.raw, h.values, r.before -> 'made' as mended, r.before -> 'cells' as "mendedFrom", h.reasons, h.mend_id as "mendId",
  h.settled_by as "settledBy", h.settled_at as "settledAt", h.settled_reason as "settledReason"
  from held h join import_files f on f.id = h.file_id left join mended_rows r on r.mend_id = h.mend_id and r.held_id = h.id`;

/** One page of held rows in the order of file and line, with how many there are. */
export async function benchRows(
  reach: RecordsReach,
  asked: HeldAsked & { readonly limit: number; readonly offset: number },
): Promise<{ rows: BenchRow[]; count: number }> {
  const parameters = askedParameters(reach.practices, asked);
  const [{ rows }, counted] = await Promise.all([
    pool().query<BenchRow>(
      `${benchRow} where ${askedWhere} order by h.file_id, h.line, h.id limit $${askedCount + 1} offset $${askedCount + 2}`,
      [...parameters, asked.limit, asked.offset],
    ),
    pool().query<{ count: number }>(
      `select count(*)::int as count from held h where ${askedWhere}`,
      parameters,
    ),
  ]);
  return { rows, count: counted.rows[0]?.count ?? 0 };
}

/** One held row, whatever became of it; null where there is none within the reach. */
export async function benchRowOf(reach: RecordsReach, id: string): Promise<BenchRow | null> {
  const { rows } = await benchRows(reach, { ids: [id], limit: 1, offset: 0 });
  return rows[0] ?? null;
}
