import { noAccount } from "@/lib/records/log-line";
import { writeLines } from "@/lib/store/log/write-lines";
import { type AttemptName, loggedAttempts } from "@/lib/views/log/logged-work";

/**
 * A line for a sign-in that failed. Neither what was typed as a password nor an address that is nobody's is kept. Attempts on accounts that
 * there are not, and those past the limit, leave one line an hour: whoever sends thousands shall not fill the log.
 *
 * @param status of the answer
 */
export async function noteFailedSignIn(
  status: number,
  person: string | null,
  second: boolean,
): Promise<void> {
  const what = named(status, second);
  const { kind } = loggedAttempts[what];
  const hourly = person === null || what === "too many attempts";
  await writeLines([{ kind, person: person ?? noAccount, what, about: "" }], hourly);
}

function named(status: number, second: boolean): AttemptName {
  if (status === 429) return "too many attempts";
  return second ? "wrong second factor" : "wrong password";
}
