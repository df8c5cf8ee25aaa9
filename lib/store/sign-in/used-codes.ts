import { createHash } from "node:crypto";
import { pool } from "@/lib/store/database";

/** Milliseconds in which a code could be taken again: three steps of half a minute, the one of now and those beside it. */
const takenFor = 3 * 30_000;

/**
 * Writes down that a person used a code. @returns false where they had while it could still be taken: RFC 6238, 5.2
 * asks that it be taken once. Kept beside the counts of attempts, which are cleared away in time.
 */
export async function isFirstUse(userId: string, code: string): Promise<boolean> {
  const key = `code|${createHash("sha256").update(`${userId} ${code}`).digest("hex")}`;
  const { rowCount } = await pool().query(
    `insert into rate_limits as l (id, key, count, last_request) values ($1, $1, 1, $2)
     on conflict (key) do update set last_request = $2 where l.last_request < $2 - $3::bigint`,
    [key, Date.now(), takenFor],
  );
  return rowCount === 1;
}
