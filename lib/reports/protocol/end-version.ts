import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { takeOutOfForce, withdrawVersion } from "@/lib/store/protocol/change-protocol";
import { day } from "@/lib/views/day";
import { readInput, type Wrong } from "../read-input";
import { beginning } from "./put-in-force";
import { todayIn } from "./today-in";

type Answer = { readonly done?: string; readonly wrong?: Wrong };
type Typed = Readonly<Record<string, string>>;

const ending = beginning
  .omit({ practices: true })
  .extend({ practice: z.string().min(1), id: z.string().min(1) });
const version = z.object({
  practice: z.string().min(1),
  version: z.coerce
    .number()
    .int()
    .positive()
    .max(2 ** 31 - 1),
});

/** Takes a criterion of a practice out of force from a day on. @throws Refused */
export async function endCriterion(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const input = readInput(ending, typed);
  if ("wrong" in input) return input;
  const { practice, id, from, reason } = input.read;
  const today = await todayIn(reach, [practice]);
  if (from < today)
    return { wrong: { from: `Today, ${day(today)}, or later: a past figure is never altered.` } };
  const prevented = await takeOutOfForce(reach, {
    ...{ practices: [practice], id, from, today, reason },
  });
  return prevented.length > 0
    ? { wrong: { from: "It is not in force on that day." } }
    : { done: `Out of force from ${day(from)}.` };
}

/** Withdraws a version that has not begun. @throws Refused */
export async function withdrawCriterionVersion(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const { practice, version: id } = version.parse(typed);
  const today = await todayIn(reach, [practice]);
  return (await withdrawVersion(reach, { practice, id, today }))
    ? { done: "Withdrawn; it is kept below." }
    : { wrong: { form: "It has begun, or was withdrawn already; load the page again." } };
}
