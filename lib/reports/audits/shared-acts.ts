import { z } from "zod";
import { notesReach, ownReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import {
  confirmRecords,
  disputeVisit,
  type OpenWindow,
  withdrawDispute,
} from "@/lib/store/audits/confirming";
import { keepAnswer, keepReflection } from "@/lib/store/audits/shared";
import { readInput } from "../read-input";
import { type Answer, type Typed, wordsTyped } from "./answer";
import { periodOf } from "./computed";
import { ownAudit } from "./shared";

const over: Answer = {
  wrong: { form: "The window for confirming is not open. Tell the clinical lead instead." },
};
const notYours: Answer = { wrong: { form: "There is no such audit that concerns you." } };
const numbered = z.object({ audit: z.string().max(20) });

/** Confirms one's own records, or takes that back. @throws Refused */
export async function confirmOwn(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inOwnAudit(viewer, typed, async (window) => {
    const confirmed = typed.confirmed === "yes";
    if (!(await confirmRecords(ownReach(viewer), window, confirmed))) return over;
    return { done: confirmed ? "Confirmed." : "Taken back." };
  });
}

const disputed = z.object({
  visit: z
    .string()
    .max(300)
    .regex(/^[^\0/]+\/[^\0]+$/, "Choose the visit."),
  kind: z.enum(["not-mine", "wrong"], "Choose what is the matter."),
  note: wordsTyped("Say what is the matter, so that it can be looked into."),
});

/** Disputes a visit of one's own. @throws Refused */
export async function disputeOwn(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inOwnAudit(viewer, typed, async (window) => {
    const input = readInput(disputed, typed);
    if ("wrong" in input) return input;
    const { visit, kind, note } = input.read;
    const slash = visit.indexOf("/");
    const [practice, sessionId] = [visit.slice(0, slash), visit.slice(slash + 1)];
    return (await disputeVisit(ownReach(viewer), window, { practice, sessionId, kind, note }))
      ? { done: "Kept: it stands beside the figures, and the lead answers it." }
      : {
          wrong: {
            visit: "That is no visit of yours in this audit, or the window is not open any more.",
          },
        };
  });
}

const numbers = z.object({ dispute: z.coerce.number().int().positive() });

/** Takes one's own dispute back. @throws Refused */
export async function withdrawOwn(viewer: Viewer, typed: Typed): Promise<Answer> {
  const { dispute } = numbers.parse(typed);
  return inOwnAudit(viewer, typed, async (window) =>
    (await withdrawDispute(ownReach(viewer), window, dispute)) ? { done: "Taken back." } : over,
  );
}

const text = z.object({
  text: z
    .string()
    .trim()
    .max(4000, "Say it in no more than 4000 characters.")
    .regex(/^[^\0]*$/),
});

/** Answers the audit; the lead reads it. @throws Refused */
export async function answerAudit(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inOwnAudit(viewer, typed, async ({ id }) => {
    const input = readInput(text, typed);
    if ("wrong" in input) return input;
    await keepAnswer(ownReach(viewer), notesReach(viewer), id, input.read.text);
    return { done: input.read.text ? "Kept; the lead reads it." : "Taken away." };
  });
}

/** Keeps one's own reflection, which nobody else reads. @throws Refused */
export async function reflect(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inOwnAudit(viewer, typed, async ({ id }) => {
    const input = readInput(text, typed);
    if ("wrong" in input) return input;
    await keepReflection(notesReach(viewer), id, input.read.text);
    return { done: input.read.text ? "Kept for you alone." : "Taken away." };
  });
}

async function inOwnAudit(
  viewer: Viewer,
  typed: Typed,
  work: (audit: OpenWindow) => Promise<Answer>,
): Promise<Answer> {
  const found = await ownAudit(viewer, numbered.parse(typed).audit);
  if (!found) return notYours;
  const { audit } = found;
  return work({ id: audit.id, practice: audit.practice, period: periodOf(audit) });
}
