import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { ownCodeOf } from "@/lib/protocol/own-codes";
import { plainText } from "@/lib/protocol/plain-text";
import { addTerm, retireTerm, rewordTerm } from "@/lib/store/protocol/own-terms";
import { practicesWithin } from "@/lib/store/records/practices";
import { readInput, type Wrong } from "../read-input";

type Answer = { readonly done?: string; readonly wrong?: Wrong };
type Typed = Readonly<Record<string, string>>;

const words = plainText("Write what it is called.", 80);
const kind = z.enum(["step", "task", "reason"]);
const practice = z.string().min(1).max(200);
const added = z.object({
  kind,
  words,
  practice,
  where: z.enum(["here", "everywhere"]).default("here"),
});
const named = z.object({ kind, practice, code: z.string().min(1).max(80) });

/** Adds an own term to a practice, or to every practice of the lead's. @throws Refused */
export async function addOwnTerm(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const input = readInput(added, typed);
  if ("wrong" in input) return input;
  const { where, practice: here, ...term } = input.read;
  const practices =
    where === "everywhere" ? (await practicesWithin(reach)).map(({ code }) => code) : [here];
  const code = ownCodeOf(term.words);
  const have = await addTerm(reach, practices, { ...term, code });
  return have.length > 0
    ? { wrong: { words: `${have.join(", ")} has the code ${code} already; word it otherwise.` } }
    : { done: `Added. Its code in records is ${code}.` };
}

/** Gives an own term other words. @throws Refused */
export async function rewordOwnTerm(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const input = readInput(named.extend({ words }), typed);
  if ("wrong" in input) return input;
  const { words: to, ...term } = input.read;
  return (await rewordTerm(reach, term, to)) ? { done: "Reworded." } : gone;
}

/** Retires an own term, or brings it back. @throws Refused */
export async function retireOwnTerm(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const { retired, ...term } = named.extend({ retired: z.enum(["yes", "no"]) }).parse(typed);
  if (!(await retireTerm(reach, term, retired === "yes"))) return gone;
  return { done: retired === "yes" ? "Retired: it is offered no longer." : "Offered again." };
}

const gone: Answer = { wrong: { form: "There is no such term any more; load the page again." } };
