import type pg from "pg";
import type { Value } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import { rowsByCursor } from "./rows-by-cursor";

/** A held row on its way out. */
export type HeldToGo = {
  readonly table: TableName;
  readonly kind: string;
  readonly practice: string | null;
  readonly session_id: string | null;
  readonly canal: string | null;
  readonly raw: Readonly<Record<string, string>>;
  /** What the checks made of it, where only its relation to other rows stands in the way. */
  readonly values: Readonly<Record<string, Value | null>> | null;
  readonly reasons: readonly Reason[];
};

/**
 * The rows of a table that are held now, in the order of file and line. Those that name no practice of a known zone go with
 * `last`, the zone whose records are brought in last, when every visit they may name is there.
 *
 * @param practices null is all; of some practices, a row that names none goes where its visit is theirs
 */
export async function* heldToGo(
  client: pg.ClientBase,
  table: TableName,
  zone: string,
  last: boolean,
  practices: readonly string[] | null,
): AsyncGenerator<HeldToGo> {
  yield* rowsByCursor<HeldToGo>(
    client,
    `select h.table_name as "table", h.kind, h.practice, h.session_id, h.canal, h.raw, h.values, h.reasons
     from held h left join practices p on p.code = h.practice
     where h.table_name = $1 and h.state = 'held' and (p.zone = $2 or ($3 and p.zone is null))
       and ($4::text[] is null or h.practice = any($4) or (h.practice is null
         and exists (select from sessions v where v.session_id = h.session_id and v.practice = any($4))))
     order by h.file_id, h.line, h.id`,
    [table, zone, last, practices],
  );
}
