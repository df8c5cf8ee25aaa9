import type { RecordsReach } from "@/lib/access/reach";
import type { TableName } from "@/lib/records/tables";
import { pool } from "../database";

/** One act on the bench. */
export type Mend = {
  readonly id: number;
  readonly table: TableName;
  readonly changes: unknown;
  readonly rows: number;
  readonly accepted: number;
  /** Of its rows, how many are held now, whatever came later. */
  readonly heldNow: number;
  readonly practices: readonly string[];
  readonly reason: string | null;
  readonly mapping: string | null;
  readonly by: string;
  readonly at: Date;
  readonly undoneBy: string | null;
  readonly undoneAt: Date | null;
};

/** SQL: the act `m` was on rows of the practices of a parameter alone; one without, the viewer's own. */
const mendWithin =
  "($1::text[] is null or (m.practices <@ $1 and (m.practices <> '{}' or m.by = $2)))";

const select = `select m.id, m.table_name as "table", m.changes, m.rows, m.accepted, m.practices, m.reason, m.mapping, m.by, m.at,
  m.undone_by as "undoneBy", m.undone_at as "undoneAt",
  (select count(*)::int from mended_rows r join held h on h.id = r.held_id where r.mend_id = m.id and h.state = 'held') as "heldNow"
  from mends m`;

/** The acts on the bench, latest first, with how many there are. */
export async function mendsMade(
  reach: RecordsReach,
  asked: { readonly limit: number; readonly offset: number },
): Promise<{ rows: Mend[]; count: number }> {
  const [{ rows }, counted] = await Promise.all([
    pool().query<Mend>(`${select} where ${mendWithin} order by m.id desc limit $3 offset $4`, [
      reach.practices,
      reach.by,
      asked.limit,
      asked.offset,
    ]),
    pool().query<{ count: number }>(
      `select count(*)::int as count from mends m where ${mendWithin}`,
      [reach.practices, reach.by],
    ),
  ]);
  return { rows, count: counted.rows[0]?.count ?? 0 };
}

/** The acts that changed a held row, oldest first. */
export async function mendsOfRow(_reach: RecordsReach, heldId: string): Promise<Mend[]> {
  const { rows } = await pool().query<Mend>(
    `${select} join mended_rows r on r.mend_id = m.id where r.held_id = $1 order by m.id`,
    [heldId],
  );
  return rows;
}

/** Notes that the rule of a mend joined a mapping. */
export async function noteMapping(
  _reach: RecordsReach,
  id: number,
  mapping: string,
): Promise<void> {
  await pool().query("update mends set mapping = $2 where id = $1", [id, mapping]);
}
