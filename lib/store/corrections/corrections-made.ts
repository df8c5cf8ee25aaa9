import type { RecordsReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import type { TableName } from "@/lib/records/tables";
import { pool } from "../database";
import type { VisitHead } from "../visit/visit-head";

/** A newer version that was taken, with the old one. */
export type CorrectionMade = {
  readonly id: number;
  readonly table: TableName;
  readonly practice: string;
  readonly zone: string;
  readonly sessionId: string | null;
  readonly key: string;
  readonly before: Values;
  readonly after: Values;
  readonly rule: "asked" | "newer";
  readonly by: string;
  readonly at: Date;
  readonly undoneBy: string | null;
  readonly undoneAt: Date | null;
};

const select = `select c.id, c.table_name as "table", c.practice, p.zone, c.session_id as "sessionId", c.key,
  jsonb_strip_nulls(c.before -> 'row') as before, jsonb_strip_nulls(c.after -> 'row') as after,
  c.rule, c.by, c.at, c.undone_by as "undoneBy", c.undone_at as "undoneAt"
  from corrections c join practices p on p.code = c.practice`;

/** The corrections made, latest first, with how many there are. */
export async function correctionsMade(
  reach: RecordsReach,
  asked: {
    readonly practice?: string | undefined;
    readonly state?: "standing" | "taken back" | undefined;
    readonly limit: number;
    readonly offset: number;
  },
): Promise<{ rows: CorrectionMade[]; count: number }> {
  const where = `($1::text[] is null or c.practice = any($1)) and ($2::text is null or c.practice = $2)
    and ($3::text is null or (c.undone_at is null) = ($3 = 'standing'))`;
  const parameters = [reach.practices, asked.practice ?? null, asked.state ?? null];
  const [{ rows }, counted] = await Promise.all([
    pool().query<CorrectionMade>(`${select} where ${where} order by c.id desc limit $4 offset $5`, [
      ...parameters,
      asked.limit,
      asked.offset,
    ]),
    pool().query<{ count: number }>(
      `select count(*)::int as count from corrections c where ${where}`,
      parameters,
    ),
  ]);
  return { rows, count: counted.rows[0]?.count ?? 0 };
}

/** The corrections that stand of a visit's rows, oldest first. Only a head that was within reach leads here. */
export async function correctionsOfVisit(head: VisitHead): Promise<CorrectionMade[]> {
  const { rows } = await pool().query<CorrectionMade>(
    `${select} where c.practice = $1 and c.session_id = $2 and c.undone_at is null order by c.id`,
    [head.practice, head.sessionId],
  );
  return rows;
}
