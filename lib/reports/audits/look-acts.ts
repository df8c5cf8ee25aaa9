import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import { lookSteps } from "@/lib/records/audit-work";
import { answerDispute } from "@/lib/store/audits/confirming";
import { endLook } from "@/lib/store/audits/looks";
import { lookTextKey } from "@/lib/views/audits/text-keys";
import { readInput } from "../read-input";
import { type Answer, inAudit, notOpen, type Typed, wordsTyped } from "./answer";

const ending = z.object({
  flag: z.string().max(300),
  step: z.enum([...lookSteps, ""], "Choose the step at which it ended."),
});

/**
 * Ends the closer look at a flag: at a step, once a finding is written there and at every step before it. Without a step it is taken
 * up again. @throws Refused
 */
export async function endCloserLook(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row, content }) => {
    const input = readInput(ending, typed);
    if ("wrong" in input) return input;
    const { flag, step } = input.read;
    if (!toLookAt(content.computed).some(({ id }) => id === flag))
      return { wrong: { form: "This is not among what is looked at; load the page again." } };
    const written = new Set(content.work.texts.map(({ key }) => key));
    const upTo = step === "" ? [] : lookSteps.slice(0, lookSteps.indexOf(step) + 1);
    if (upTo.some((one) => !written.has(lookTextKey(flag, one))))
      return {
        wrong: {
          form: "Write what was found at each step up to this one first: records, cases, equipment, way of working, and only then the person.",
        },
      };
    const kept = await endLook(leadReach(viewer), row.id, flag, step === "" ? null : step);
    if (!kept) return notOpen;
    return { done: step === "" ? "Taken up again." : "Kept." };
  });
}

const answering = z.object({
  dispute: z.coerce.number().int().positive(),
  answer: wordsTyped("Say what was found, or what is done about it."),
});

/** Answers what a clinician disputes. @throws Refused */
export async function answerToDispute(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const input = readInput(answering, typed);
    if ("wrong" in input) return input;
    const { dispute, answer } = input.read;
    const kept = await answerDispute(leadReach(viewer), row.id, dispute, answer);
    return kept ? { done: "Kept; the clinician sees it on their page." } : notOpen;
  });
}
