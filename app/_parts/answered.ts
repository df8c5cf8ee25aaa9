import { Refused } from "@/lib/access/refused";
import type { Answer } from "./answer";

/** Does an action's work; what is refused is said in the form, and what was typed stays in it where something is wrong. */
export async function answered(form: FormData, work: () => Promise<Answer>): Promise<Answer> {
  const answer = await work().catch((error: unknown): Answer => {
    if (error instanceof Refused) return { wrong: { form: error.message } };
    throw error;
  });
  return answer.wrong ? { ...answer, given: typed(form) } : answer;
}

/** The form's text fields; those of React itself begin with a dollar, and passwords do not travel back. */
export function typed(form: FormData): Record<string, string> {
  const fields: Record<string, string> = {};
  for (const [name, value] of form) {
    if (typeof value === "string" && !name.startsWith("$") && name !== "password") fields[name] = value;
  }
  return fields;
}
