import { createHash } from "node:crypto";
import { APIError, createAuthMiddleware } from "better-auth/api";
import { pool } from "@/lib/store/database";
import { isFirstUse } from "./used-codes";

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
    if (!(await countAttempt(accountKey(emailIn(context.body))))) {
      throw new APIError("TOO_MANY_REQUESTS", { message: "Too many attempts on this account." });
    }
  }),
  after: createAuthMiddleware(async (context) => {
    const { path, context: inner } = context;
    if (!inner.newSession) return;
    if (path === "/two-factor/verify-totp") await mustBeUnused(context.body, inner.newSession);
    if (path === "/sign-in/email" || path?.startsWith("/two-factor/verify")) {
      await forgetAttempts(inner.newSession.user.email);
    }
  }),
};

/** A code that was seen over somebody's shoulder opens nothing: the session it made ends before it began. */
async function mustBeUnused(
  body: unknown,
  { session, user }: { session: { token: string }; user: { id: string } },
): Promise<void> {
  const code = (body as { code?: unknown } | undefined)?.code;
  if (await isFirstUse(user.id, String(code))) return;
  await pool().query("delete from sign_ins where token = $1", [session.token]);
  throw new APIError("UNAUTHORIZED", { message: "This code was used already." });
}

/** Counts a try of the password by somebody who is signed in already. @returns may it be tried */
export async function mayTryPassword(email: string): Promise<boolean> {
  return countAttempt(accountKey(email));
}

/** The password was right. */
export async function forgetAttempts(email: string): Promise<void> {
  await pool().query("delete from rate_limits where key = $1", [accountKey(email)]);
}

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
function accountKey(email: string): string {
  return `account|${createHash("sha256").update(email.trim().toLowerCase()).digest("hex")}`;
}

function emailIn(body: unknown): string {
  const email = (body as { email?: unknown } | undefined)?.email;
  return typeof email === "string" ? email : "";
}
