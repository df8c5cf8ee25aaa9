import { ZodError } from "zod";
import { Refused } from "@/lib/access/refused";
import type { Answer } from "./answer";

const notWhole = "The form did not arrive whole; load the page again and repeat it.";

/** Answers a form in words: a refusal becomes its sentence, and with anything wrong what was typed comes back. */
export async function answered(form: FormData, work: () => Promise<Answer>): Promise<Answer> {
  try {
    const answer = await work();
    return answer.wrong ? { ...answer, given: typed(form) } : answer;
  } catch (error) {
    if (error instanceof ZodError) return { wrong: { form: notWhole }, given: typed(form) };
    if (!(error instanceof Refused)) throw error;
    return { wrong: { form: error.message }, given: typed(form) };
  }
}

/** The text fields of a form as typed, without a password and without Next's own fields. */
export function typed(form: FormData): Record<string, string> {
  const fields = [...form].filter(
    (field): field is [string, string] =>
      typeof field[1] === "string" && field[0] !== "password" && !field[0].startsWith("$"),
  );
  return Object.fromEntries(fields);
}
