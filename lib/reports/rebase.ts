import { z } from "zod";
import { leadReach, narrowed } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { period as periodNamed, rollingYear } from "@/lib/records/period";
import { type Line, rebase, withdrawRebase } from "@/lib/store/comparing/rebases";
import { askedWhose, onlyPractice } from "./asked-whose";
import { figures, measuresShown } from "./figures";
import { readInput, type Wrong } from "./read-input";

type Answer = { readonly done?: string; readonly wrong?: Wrong };
type Typed = Readonly<Record<string, string>>;

const line = z.object({
  measure: z.string(),
  period: z.string(),
  practice: z.string().optional(),
  whose: z.string().optional(),
});
const chosen = z.object({
  month: z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, "Choose the first month of the new limits."),
  reason: z.string().trim().min(1, "Say why: the reason is printed with the chart.").max(300),
});
const numbered = z.object({ id: z.coerce.number().int().positive() });

/** Lets the limits of a line begin anew, with a reason that is kept and printed. @throws Refused */
export async function setRebase(viewer: Viewer, typed: Typed): Promise<Answer> {
  const input = readInput(chosen, typed);
  if ("wrong" in input) return input;
  const { reach, of } = await lineOf(viewer, typed);
  await rebase(reach, of, input.read);
  return { done: "The limits begin anew there. It can be taken back below." };
}

/** Takes a rebase back. @throws Refused */
export async function takeRebaseBack(viewer: Viewer, typed: Typed): Promise<Answer> {
  const { id } = numbered.parse(typed);
  const { reach, of } = await lineOf(viewer, typed);
  return (await withdrawRebase(reach, of, id))
    ? { done: "Taken back: the limits run through again." }
    : { wrong: { form: "It was taken back already; load the page again." } };
}

/** The line that a form is about, where it lies within the viewer's reach. */
async function lineOf(viewer: Viewer, typed: Typed) {
  const { measure, period, practice, whose } = line.parse(typed);
  const reach = narrowed(leadReach(viewer), practice || undefined);
  const span = periodNamed(period);
  if (!span || !(await measuresShown(reach, [span, rollingYear(span)])).includes(measure))
    throw new Refused("There is no such measure or period.");
  const shown = await figures(reach, {
    measures: [measure],
    // Rates of few units are shown of four quarters, with everyone who worked in them.
    periods: [span, rollingYear(span)],
    by: ["practice", "clinician"],
  });
  const asked = askedWhose(whose, onlyPractice(reach), shown);
  if ((whose ?? "") !== asked.name) throw new Refused("That line is not yours to set limits on.");
  const of: Line = { measure, ...asked.whose };
  return { reach, of };
}
