import { parseCookies } from "better-auth/cookies";
import { pool } from "@/lib/store/database";

/**
 * Whose account a sign-in tries: that of the address that was typed, or, where none was, that of the cookie by which the password was
 * right before. Null where there is no such account. It needs no reach: whoever signs in has none, and is never told.
 */
export async function whoseAttempt(email: string | null, headers: Headers): Promise<string | null> {
  if (email !== null) {
    const address = email.trim().toLowerCase();
    return first("select id from users where email = $1", address);
  }
  // The cookie is a name of 32 random letters and its signature; whoever could guess the name would need none.
  const [, cookie = ""] =
    [...parseCookies(headers.get("cookie") ?? "")].find(([name]) => name.endsWith("two_factor")) ??
    [];
  const [name = ""] = cookie.split(".");
  return first(
    "select u.id from verifications v join users u on u.id = v.value where v.identifier = $1",
    name,
  );
}

async function first(sql: string, value: string): Promise<string | null> {
  // PostgreSQL takes no zero byte, and no account has one.
  if (value.includes("\0")) return null;
  const { rows } = await pool().query<{ id: string }>(sql, [value]);
  return rows[0]?.id ?? null;
}
