import { createHash } from "node:crypto";
import { APIError, createAuthMiddleware } from "better-auth/api";
import { pool } from "@/lib/store/database";

/** Failed attempts on one account, common practice: ten within a quarter of an hour. */
const mostAttempts = 10;
/** Seconds without an attempt after which an account's count starts afresh. */
export const keepAttemptsFor = 900;

/**
 * Limits attempts by the account that is tried, whether it exists or not (nothing can be learnt from being
 * limited), however the address is forged. A sign-in that succeeds clears the count.
 */
export const attemptsPerAccount = {
  before: createAuthMiddleware(async (context) => {
    if (context.path !== "/sign-in/email") return;
    if (!(await countAttempt(accountKey(context.body)))) {
      throw new APIError("TOO_MANY_REQUESTS", { message: "Too many attempts on this account." });
    }
  }),
  after: createAuthMiddleware(async (context) => {
    if (context.path !== "/sign-in/email" || !context.context.newSession) return;
    await pool().query("delete from rate_limits where key = $1", [accountKey(context.body)]);
  }),
};

/** Counts in one statement, so that attempts side by side cannot slip past. @returns may it be tried */
async function countAttempt(key: string): Promise<boolean> {
  const { rows } = await pool().query<{ count: number }>(
    `insert into rate_limits as l (id, key, count, last_request) values ($1, $1, 1, $2)
     on conflict (key) do update set
       count = case when l.last_request < $2 - $3 * 1000 then 1 else l.count + 1 end,
       last_request = case when l.count > $4 and l.last_request >= $2 - $3 * 1000 then l.last_request else $2 end
     returning count`,
    [key, Date.now(), keepAttemptsFor, mostAttempts],
  );
  return (rows[0]?.count ?? 1) <= mostAttempts;
}

/** The address itself is not kept: who mistypes a password into the field of the name should not find it stored. */
function accountKey(body: unknown): string {
  const email = (body as { email?: unknown } | undefined)?.email;
  const text = typeof email === "string" ? email.trim().toLowerCase() : "";
  return `account|${createHash("sha256").update(text).digest("hex")}`;
}
