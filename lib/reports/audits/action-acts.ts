import { z } from "zod";
import { leadReach, notesReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { agreeAction, possibleOwners, tellAction, tellOwnAction } from "@/lib/store/audits/actions";
import { readInput } from "../read-input";
import { type Answer, dayTyped, inAudit, notOpen, type Typed, wordsTyped } from "./answer";

const agreed = z.object({
  action: z.coerce.number().int().positive().optional().catch(undefined),
  measure: z
    .string()
    .max(80)
    .regex(/^[^\0]*$/),
  what: wordsTyped("Say what is to be done."),
  why: wordsTyped("Say why: which finding it answers."),
  owner: z.string().max(80).min(1, "Choose who sees to it."),
  due: dayTyped("Choose the day by which it is done."),
  know: wordsTyped("Say how we will know that it worked."),
});

/** Agrees an action, or changes one that was agreed in this audit. @throws Refused */
export async function agree(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ reach, row }) => {
    const input = readInput(agreed, typed);
    if ("wrong" in input) return input;
    const { action, measure, owner, ...rest } = input.read;
    const person = (await possibleOwners(reach, row.practice)).find(({ id }) => id === owner);
    if (!person) return { wrong: { owner: "Choose somebody from the list." } };
    const kept = await agreeAction(
      leadReach(viewer),
      row.id,
      { ...rest, measure: measure || null, owner: person.name, ownerId: person.id },
      action,
    );
    return kept
      ? { done: action ? "Changed." : "Agreed. It stands on the owner's page." }
      : notOpen;
  });
}

const news = z.object({
  action: z.coerce.number().int().positive(),
  state: z.enum(["open", "done", "dropped"], "Choose how it stands."),
  text: wordsTyped("Say what was done, or why it was dropped."),
});

/** Tells what became of an action: its owner, or a lead within whose reach it is. @throws Refused */
export async function tellOfAction(viewer: Viewer, typed: Typed): Promise<Answer> {
  const input = readInput(news, typed);
  if ("wrong" in input) return input;
  const { action, ...told } = input.read;
  const own = await tellOwnAction(notesReach(viewer), action, told);
  const kept = own || (await tellAction(leadReach(viewer), action, told));
  return kept
    ? { done: "Kept with the action." }
    : { wrong: { form: "There is no such action among those you own or run." } };
}
