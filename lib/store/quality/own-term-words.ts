import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { pool } from "../database";

/** A practice's own word for a reason or a task. */
export type OwnTermWords = {
  readonly practice: string;
  readonly code: string;
  readonly words: string;
  readonly retired: boolean;
};

/** The practices' own terms of a kind, by practice and code. A clinician's work may lie in any practice. */
export async function ownTermWords(
  reach: FiguresReach | OwnReach,
  kind: "reason" | "task",
): Promise<OwnTermWords[]> {
  const { rows } = await pool().query<OwnTermWords>(
    `select practice, code, words, retired from own_terms
     where kind = $1 and ($2::text[] is null or practice = any($2)) order by practice, code`,
    [kind, "practices" in reach ? reach.practices : null],
  );
  return rows;
}
