import { heldWithin } from "../import/imports";

/** Which held rows are meant; all that is given must hold. */
export type HeldAsked = {
  readonly table?: string | undefined;
  readonly kind?: string | undefined;
  /** A column that one of the reasons is about; the empty text is the row as a whole. */
  readonly column?: string | undefined;
  /** What that reason found. */
  readonly found?: string | undefined;
  /** An import that brought the row. */
  readonly importId?: number | undefined;
  /** Rows that this act on the bench changed, whatever became of them. */
  readonly mend?: number | undefined;
  readonly ids?: readonly string[] | undefined;
  readonly state?: HeldState | undefined;
};

export type HeldState = "held" | "let-go" | "mended" | "corrected";

/** SQL condition on held row `h` for the parameters of `askedParameters`, which begin at $1. */
export const askedWhere = `($1::text is null or h.state = $1) and ${heldWithin(2)}
  and ($3::text is null or h.table_name = $3) and ($4::text is null or h.kind = $4)
  and ($5::text is null or case when h.reasons = '[]' then $5 = '' else exists (select from jsonb_array_elements(h.reasons) r
    where coalesce(r ->> 'column', '') = $5 and ($6::text is null or r ->> 'found' = $6)) end)
  and ($7::int is null or exists (select from import_files b where b.import_id = $7 and (b.id = h.file_id
    or b.id in (select w.file_id from witnesses w where w.table_name = 'held' and w.row_id = h.id))))
  and ($8::int is null or exists (select from mended_rows r where r.mend_id = $8 and r.held_id = h.id))
  and ($9::bigint[] is null or h.id = any($9))`;

/** Their number, for parameters that follow. */
export const askedCount = 9;

/** @param practices of the reach; null is all */
export function askedParameters(practices: readonly string[] | null, asked: HeldAsked): unknown[] {
  return [
    asked.state ?? null,
    practices,
    asked.table ?? null,
    asked.kind ?? null,
    asked.column ?? null,
    asked.found ?? null,
    asked.importId ?? null,
    asked.mend ?? null,
    asked.ids ?? null,
  ];
}
