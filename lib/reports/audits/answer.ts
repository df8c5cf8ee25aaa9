import { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import { isDay } from "@/lib/records/period";
import type { Wrong } from "../read-input";
import { type AuditAt, auditAt } from "./audit-at";

/** What an act on an audit answers to its form. */
export type Answer = { readonly done?: string; readonly wrong?: Wrong };
export type Typed = Readonly<Record<string, string>>;

export const notOpen: Answer = {
  wrong: {
    form: "This audit is not open to writing: it is signed, or set aside. Load the page again to see how it stands.",
  },
};

/** The same for an audit that is not there, whether it exists elsewhere or not. */
export const noAudit: Answer = {
  wrong: { form: "There is no such audit among those you run." },
};

const numbered = z.object({ audit: z.string().max(20) });

/** Reads the audit that a form is about and does the work there. @throws Refused */
export async function inAudit(
  viewer: Viewer,
  typed: Typed,
  work: (audit: AuditAt) => Promise<Answer>,
): Promise<Answer> {
  const found = await auditAt(viewer, numbered.parse(typed).audit);
  return found ? work(found) : noAudit;
}

/** Words that must be there; no database takes a NUL in a text. */
export const wordsTyped = (sentence: string, longest = 1000) =>
  z
    .string()
    .trim()
    .min(1, sentence)
    .max(longest, `Say it in no more than ${longest} characters.`)
    .regex(/^[^\0]*$/);

/** A day of the calendar, or a sentence. */
export const dayTyped = (sentence: string) => z.string().refine(isDay, sentence);
