import type { Criterion } from "@/lib/protocol/criterion";
import { pool } from "@/lib/store/database";

/** Writes versions of criteria into the database as they are, for every practice, from a day on. */
export async function putVersions(
  practices: readonly string[],
  criteria: readonly Criterion[],
  from = "2000-01-01",
): Promise<void> {
  for (const practice of practices)
    for (const criterion of criteria)
      await pool().query(
        `insert into criterion_versions (practice, criterion, definition, in_force, "from", written_on, reason, by)
         values ($1, $2, $3, true, $4::date, $4::date, 'set for the test', 'test')`,
        [practice, criterion.id, JSON.stringify(criterion), from],
      );
}
