import { ZodError } from "zod";
import { Refused } from "@/lib/access/refused";
import { writeDone } from "@/lib/reports/log/note";
import { asWhoAsks, viewerOrNobody } from "@/lib/reports/viewer";
import { type ActName, loggedActs } from "@/lib/views/log/logged-acts";
import type { Logged } from "@/lib/views/log/logged-pages";
import type { Answer } from "./answer";
import { seen } from "./seen";

const notWhole = "The form did not arrive whole; load the page again and repeat it.";

/**
 * Answers a form in words: a refusal becomes its sentence, and with anything wrong what was typed comes back. What was done, or was
 * refused, leaves a line in the log.
 */
export async function answered(
  act: ActName,
  form: FormData,
  work: () => Promise<Answer>,
): Promise<Answer> {
  // As it was sent: the work may take fields away.
  const about = [...form];
  try {
    const answer = await asWhoAsks(work);
    if (answer.wrong) return { ...answer, given: typed(form) };
    await done(act, about);
    return answer;
  } catch (error) {
    if (leadsOn(error)) await done(act, about);
    if (error instanceof ZodError) return { wrong: { form: notWhole }, given: typed(form) };
    if (!(error instanceof Refused)) throw error;
    await seen("refused", act, []);
    return { wrong: { form: error.message }, given: typed(form) };
  }
}

async function done(act: ActName, about: readonly [string, unknown][]): Promise<void> {
  const viewer = await viewerOrNobody();
  if (!viewer) return;
  const logged: Logged = loggedActs[act];
  if ("kind" in logged && logged.kind === "saw") return seen("saw", act, about);
  await writeDone(logged, { person: viewer.userId, what: act }, about);
}

/** Next leads on by throwing. */
function leadsOn(error: unknown): boolean {
  return (
    error instanceof Error && "digest" in error && `${error.digest}`.startsWith("NEXT_REDIRECT")
  );
}

/** The text fields of a form as typed, without a password and without Next's own fields. */
export function typed(form: FormData): Record<string, string> {
  const fields = [...form].filter(
    (field): field is [string, string] =>
      typeof field[1] === "string" && field[0] !== "password" && !field[0].startsWith("$"),
  );
  return Object.fromEntries(fields);
}
