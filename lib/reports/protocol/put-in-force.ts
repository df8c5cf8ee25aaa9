import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { ownCodeOf } from "@/lib/protocol/own-codes";
import { readCriterion } from "@/lib/protocol/read-criterion";
import { isDay } from "@/lib/records/period";
import { putInForce } from "@/lib/store/protocol/change-protocol";
import { freeOwnId } from "@/lib/store/protocol/free-own-id";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { settled } from "@/lib/views/protocol/edit/editable";
import { readInput, type Wrong } from "../read-input";
import { jsonText, practiceCodes } from "./json-text";
import { todayIn } from "./today-in";
import { withoutTerms } from "./without-terms";

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
  if ("wrong" in input) return input;
  const { from, practices, reason, isNew } = input.read;
  const named = isNew ? withOwnId(input.read.criterion) : input.read.criterion;
  const result = readCriterion(named, { inForce: true });
  if ("wrong" in result)
    return {
      wrong: Object.fromEntries(
        result.wrong.map(({ path, message }) => [`${ofCriterion}${path}`, message]),
      ),
    };
  const read = settled(result.read);
  const criterion = isNew ? { ...read, id: await freeOwnId(reach, read.id) } : read;
  const unfit = isNew ? undefined : unfitUnit(criterion, await protocolWithin(reach));
  if (unfit) return { wrong: unfit };
  const lacking = await withoutTerms(reach, criterion, practices);
  if (lacking) return { wrong: { practices: lacking } };
  const today = await todayIn(reach, practices);
  const prevented = await putInForce(reach, { practices, criterion, from, today, reason });
  if (prevented.length > 0)
    return {
      wrong: {
        from: `In ${prevented.join(", ")} it was in force since that day, and a change never alters a past figure: choose today or later.`,
      },
    };
  return { id: criterion.id };
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
