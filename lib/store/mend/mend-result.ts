import type pg from "pg";
import type { Reason } from "@/lib/records/reason";
import type { Mending } from "./mending";

type Cells = Readonly<Record<string, string>>;

/** What a mend did, or would do. */
export type MendResult = {
  /** 0 where nothing was done. */
  readonly mendId: number;
  readonly rows: number;
  readonly accepted: number;
  readonly repeated: number;
  readonly stillHeld: number;
  /** Other rows that waited for these and joined. */
  readonly joined: number;
  /** Why rows are held still, those of most rows first. */
  readonly reasons: readonly {
    readonly kind: string;
    readonly column: string;
    readonly remedy: string;
    readonly rows: number;
  }[];
  readonly examples: readonly MendedExample[];
};

export type MendedExample = {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly key: string;
  readonly before: Cells;
  readonly after: Cells;
  readonly outcome: "accepted" | "repeated" | "held";
  /** Why it is held, where it is. */
  readonly kind: string;
  readonly reasons: readonly Reason[];
};

/** How many rows are held. */
export async function heldNow(client: pg.ClientBase): Promise<number> {
  const { rows } = await client.query<{ held: number }>(
    "select count(*)::int as held from held where state = 'held'",
  );
  return rows[0]?.held ?? 0;
}

/** What became of the rows of the temporary table `mending`; the act's own counts are kept. */
export async function resultOf(
  client: pg.ClientBase,
  mendId: number,
  heldBefore: number,
  { examples }: Mending,
): Promise<MendResult> {
  await client.query(`
    create temp table became on commit drop as
    select h.id, h.file_id, h.line, h.key, h.kind, h.reasons, m.cells, m.made,
      case h.state when 'mended' then r.places -> 0 ->> 'as' else 'held' end as outcome
    from mending m join held h on h.id = m.held_id join mended_rows r on r.held_id = h.id and r.mend_id = ${Number(mendId)}`);
  const counts = await client.query<
    Pick<MendResult, "rows" | "accepted" | "repeated" | "stillHeld">
  >(
    `select count(*)::int as rows, count(*) filter (where outcome = 'accepted')::int as accepted,
       count(*) filter (where outcome = 'repeated')::int as repeated, count(*) filter (where outcome = 'held')::int as "stillHeld" from became`,
  );
  const reasons = await client.query<MendResult["reasons"][number]>(
    `select b.kind, coalesce(r ->> 'column', '') as column, min(r ->> 'remedy') as remedy, count(*)::int as rows
     from became b cross join lateral jsonb_array_elements(b.reasons) r where b.outcome = 'held'
     group by 1, 2 order by 4 desc, 1, 2 limit 10`,
  );
  const shown = await client.query<MendedExample>(
    `select b.id::text, f.name as file, b.line, b.key, b.cells as before, b.made as after, b.outcome, b.kind, b.reasons
     from became b join import_files f on f.id = b.file_id order by b.file_id, b.line limit $1`,
    [examples],
  );
  const [counted] = counts.rows;
  if (!counted) throw new Error("a count has a row");
  await client.query("update mends set accepted = $2, still_held = $3 where id = $1", [
    mendId,
    counted.accepted,
    counted.stillHeld,
  ]);
  const letIn = counted.accepted + counted.repeated;
  return {
    mendId: counted.rows === 0 ? 0 : mendId,
    ...counted,
    joined: Math.max(0, heldBefore - letIn - (await heldNow(client))),
    reasons: reasons.rows,
    examples: shown.rows,
  };
}
