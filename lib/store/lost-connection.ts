/** What PostgreSQL says when it goes (class 57P of its error codes) or is not reached (class 08), and what Node says of its line. */
const codes =
  /^(57P0[1-3]|08\w{3}|ECONNRESET|ECONNREFUSED|ECONNABORTED|EPIPE|ETIMEDOUT|P1001|P1002|P1017)$/;

/** Was it the database that went away, so that what was asked of it may be asked again. */
export function isLostConnection(trouble: unknown): boolean {
  if (!(trouble instanceof Error)) return false;
  const { code } = trouble as { code?: unknown };
  if (typeof code === "string" && codes.test(code)) return true;
  return /connection (terminated|ended|error)|not queryable|server closed the connection/i.test(
    trouble.message,
  );
}
