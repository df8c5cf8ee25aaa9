import { z } from "zod";
import { type FiguresReach, leadReach, narrowed } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Criterion } from "@/lib/protocol/criterion";
import { readCriterion } from "@/lib/protocol/read-criterion";
import type { Period } from "@/lib/records/period";
import { judgedCounts, judgedExamples } from "@/lib/store/figures/judged";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { dataState } from "@/lib/store/quality/data-state";
import { explanationAddress } from "@/lib/views/explanation-address";
import { addedUp } from "@/lib/views/protocol/added-up";
import { countedQuarter } from "@/lib/views/protocol/counted-quarter";
import { criterionState } from "@/lib/views/protocol/criterion-state";
import { settled } from "@/lib/views/protocol/edit/editable";
import { ownWordsOf } from "@/lib/views/protocol/own-words";
import {
  type JudgedCounts,
  type JudgedExample,
  type PreviewView,
  previewView,
} from "@/lib/views/protocol/preview-view";
import { visitAddress } from "@/lib/views/visit-address";
import { keptWithin } from "../kept-within";
import { readInput, type Wrong } from "../read-input";
import { jsonText, practiceCodes } from "./json-text";
import { ofCriterion } from "./put-in-force";
import { todayIn } from "./today-in";
import { wordless } from "./wordless";

/** How many examples of each outcome. */
const each = 3;
const asked = z.object({
  criterion: jsonText,
  practices: practiceCodes,
  isNew: z.enum(["yes", ""]).default(""),
});

/**
 * What a criterion as it is edited would have done to the last full quarter, beside the version in
 * force; or what must be set before it can be counted. @throws Refused
 */
export async function previewCriterion(
  viewer: Viewer,
  typed: Readonly<Record<string, string>>,
): Promise<{ readonly view: PreviewView } | { readonly wrong: Wrong }> {
  const reach = leadReach(viewer);
  const input = readInput(asked, typed);
  if ("wrong" in input) return input;
  const { practices, isNew } = input.read;
  const result = readCriterion(wordless(input.read.criterion));
  if ("wrong" in result)
    return {
      wrong: Object.fromEntries(
        result.wrong.map(({ path, message }) => [`${ofCriterion}${path}`, message]),
      ),
    };
  const criterion = settled(result.read);
  const { firstDay, lastDay } = await dataState(reach);
  if (firstDay === null || lastDay === null)
    return { wrong: { form: "There are no records yet that could be counted." } };
  const { period, words } = countedQuarter(firstDay, lastDay);
  const own = ownWordsOf(await ownTerms(reach));
  const parts = practices.map((practice) => narrowed(reach, practice));
  const [proposed, now, examples] = await Promise.all([
    counted(
      parts.map((part) => ({ reach: part, criterion })),
      period,
    ),
    isNew ? null : countedNow(reach, criterion.id, practices, period),
    Promise.all(parts.map((part) => judgedExamples(part, criterion, period, each))),
  ]);
  return {
    view: previewView({
      unit: criterion.unit,
      period: words,
      proposed,
      now,
      examples: fewOfEach(examples.flat()),
      addressOf: (example) =>
        isNew ? visitOf(example) : explanationAddress(criterion.id, example),
      own,
    }),
  };
}

async function countedNow(
  reach: FiguresReach,
  id: string,
  practices: readonly string[],
  period: Period,
): Promise<JudgedCounts | null> {
  const [protocol, today] = await Promise.all([protocolWithin(reach), todayIn(reach, practices)]);
  const standing = practices.flatMap((practice) => {
    const criterion = criterionState(protocol, { id, practice, today })?.inForce;
    return criterion ? [{ reach: narrowed(reach, practice), criterion }] : [];
  });
  return standing.length > 0 ? counted(standing, period) : null;
}

async function counted(
  parts: readonly { readonly reach: FiguresReach; readonly criterion: Criterion }[],
  period: Period,
): Promise<JudgedCounts> {
  const all = await Promise.all(
    parts.map(({ reach, criterion }) =>
      keptWithin(reach, { judged: criterion, period }, () =>
        judgedCounts(reach, criterion, period),
      ),
    ),
  );
  return addedUp(all);
}

function fewOfEach(examples: readonly JudgedExample[]): JudgedExample[] {
  const seen = new Map<string, number>();
  return examples.filter(({ outcome }) => {
    const before = seen.get(outcome) ?? 0;
    seen.set(outcome, before + 1);
    return before < each;
  });
}

/** A criterion that is not there yet explains nothing: the visit shows what was recorded. */
function visitOf({ practice, sessionId }: JudgedExample): string | null {
  return sessionId === null ? null : visitAddress(practice, sessionId);
}
