import { z } from "zod";
import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { ownCodeOf } from "@/lib/protocol/own-codes";
import { readCriterion } from "@/lib/protocol/read-criterion";
import { isDay } from "@/lib/records/period";
import { putInForce } from "@/lib/store/protocol/change-protocol";
import { freeOwnId } from "@/lib/store/protocol/free-own-id";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { practicesWithin } from "@/lib/store/records/practices";
import { day } from "@/lib/views/day";
import { settled } from "@/lib/views/protocol/edit/editable";
import { joined } from "@/lib/views/protocol/field-sentence";
import { readInput, type Wrong } from "../read-input";
import { jsonText, practiceCodes } from "./json-text";
import { todayIn } from "./today-in";
import { withoutTerms } from "./without-terms";
import { wordless } from "./wordless";

export const beginning = z.object({
  from: z
    .string()
    .refine(isDay, "Choose a day.")
    .refine((day) => day >= "1990-01-01" && day < "2200-01-01", "Is the year right?"),
  practices: practiceCodes,
  reason: z.string().trim().min(1, "Say why: the reason stands beside the version.").max(500),
});
const chosen = beginning.extend({ criterion: jsonText, isNew: z.enum(["yes", ""]).default("") });

/** What an answer says is wrong of a part of the criterion: its path behind this. */
export const ofCriterion = "criterion.";

/** Puts a criterion that was edited in force, or says what is wrong beside each part. @throws Refused */
export async function putCriterionInForce(
  viewer: Viewer,
  typed: Readonly<Record<string, string>>,
): Promise<{ readonly id: string } | { readonly wrong: Wrong }> {
  const reach = leadReach(viewer);
  const input = readInput(chosen, typed);
  const result = readEdited(typed);
  // All that is missing is told at once, of the form and of the criterion.
  if ("wrong" in input || "wrong" in result)
    return {
      wrong: {
        ...("wrong" in input ? input.wrong : {}),
        ...("wrong" in result ? result.wrong : {}),
      },
    };
  const { from, practices, reason, isNew } = input.read;
  const read = settled(result.read);
  const criterion = isNew ? { ...read, id: await freeOwnId(reach, read.id) } : read;
  const unfit = isNew ? undefined : unfitUnit(criterion, await protocolWithin(reach));
  if (unfit) return { wrong: unfit };
  const lacking = await withoutTerms(reach, criterion, practices);
  if (lacking) return { wrong: { practices: lacking } };
  const today = await todayIn(reach, practices);
  const prevented = await putInForce(reach, { practices, criterion, from, today, reason });
  if (prevented.length > 0)
    return { wrong: { from: await tooEarly(reach, prevented, practices, { from, today }) } };
  return { id: criterion.id };
}

/** Why a change may not begin on a day that has passed, in one sentence. */
async function tooEarly(
  reach: FiguresReach,
  prevented: readonly string[],
  practices: readonly string[],
  { from, today }: { readonly from: string; readonly today: string },
): Promise<string> {
  const names = (await practicesWithin(reach))
    .filter(({ code }) => prevented.includes(code))
    .map(({ name }) => name);
  const where = practices.length > 1 ? ` in ${joined(names, "and")}` : "";
  return `A change never alters a past figure, and on ${day(from)} this criterion was already in force${where}: choose today, ${day(today)}, or a later day.`;
}

/** What is sent of the criterion, or all that is wrong with it: what it demands too, where it still lacks words. */
function readEdited(
  typed: Readonly<Record<string, string>>,
): { readonly read: Criterion } | { readonly wrong: Wrong } {
  const sent = jsonText.safeParse(typed.criterion);
  // What did not arrive whole is said of the form.
  if (!sent.success) return { wrong: {} };
  const named = typed.isNew === "yes" ? withOwnId(sent.data) : sent.data;
  const [result, sense] = [named, wordless(named)].map((one) =>
    readCriterion(one, { inForce: true }),
  );
  if (result && "read" in result) return result;
  const parts = [result, sense].flatMap((one) => (one && "wrong" in one ? one.wrong : []));
  const wrong: Record<string, string> = {};
  for (const { path, message } of parts) wrong[`${ofCriterion}${path}`] ??= message;
  return { wrong };
}

function withOwnId(criterion: unknown): unknown {
  const title =
    typeof criterion === "object" && criterion !== null && "title" in criterion
      ? criterion.title
      : undefined;
  return typeof title === "string" ? { ...(criterion as object), id: ownCodeOf(title) } : criterion;
}

/** An own criterion must be there already, and goes on counting what it counted. */
function unfitUnit(
  { id, unit }: Criterion,
  { versions }: { versions: readonly { criterion: Criterion }[] },
): Wrong | undefined {
  const before = [...defaults, ...versions.map(({ criterion }) => criterion)].find(
    (one) => one.id === id,
  );
  if (!before) return { form: "There is no such criterion any more; load the page again." };
  return before.unit === unit
    ? undefined
    : {
        [`${ofCriterion}unit`]:
          "What it counts stays as it is: add a criterion of your own instead.",
      };
}
