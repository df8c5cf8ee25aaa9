import type { RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** What a practice does with a newer version of an accepted row: asks, takes it, or lets the first stand. */
export const newerVersionsRules = ["ask", "newer", "first"] as const;
export type NewerVersionsRule = (typeof newerVersionsRules)[number];

export type PracticeRule = {
  readonly code: string;
  readonly name: string;
  readonly rule: NewerVersionsRule;
};

/** The rule of every practice within the reach, by code. */
export async function newerVersions(reach: RecordsReach): Promise<PracticeRule[]> {
  const { rows } = await pool().query<PracticeRule>(
    `select code, name, newer_versions as rule from practices where $1::text[] is null or code = any($1) order by code`,
    [reach.practices],
  );
  return rows;
}

/** Sets a practice's rule for what comes from now on. @returns false where there is no such practice within the reach */
export async function setNewerVersions(
  reach: RecordsReach,
  practice: string,
  rule: NewerVersionsRule,
): Promise<boolean> {
  const { rowCount } = await pool().query(
    `update practices set newer_versions = $2 where code = $1 and ($3::text[] is null or code = any($3))`,
    [practice, rule, reach.practices],
  );
  return rowCount === 1;
}
