import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import { listsIn } from "@/lib/protocol/looked-at";
import { groupOf } from "../condition-words";
import { conditionOf, partOf } from "../part";

/** A criterion and a condition as the editor holds them. */
export type EditedCriterion = Criterion;
export type EditedCondition = Condition;

/** Where a list's sentence holds conditions. */
const inner = ["that", "are", "one", "other", "lies", "each", "comes"] as const;

/** The criterion with a group wherever conditions can be added, so that a row can stand beside the one that is there. */
export function editable(criterion: Criterion): Criterion {
  return everywhere(criterion, grouped);
}

/** The inverse of {@link editable}: a group of one is that one. The whole course is looked at where one of its lists is. */
export function settled(criterion: Criterion): Criterion {
  const { wholeCourse: _, ...rest } = everywhere(criterion, ungrouped);
  const conditions = [rest.population, rest.met, ...rest.exclusions.map(({ when }) => when)];
  return conditions.flatMap(listsIn).includes("course") ? { ...rest, wholeCourse: true } : rest;
}

/** The criterion as the editor sends it, with its groups, so that what is wrong is named by the place where it is shown. */
export function sendable(criterion: Criterion): Criterion {
  const { wholeCourse: _, ...rest } = criterion;
  return settled(criterion).wholeCourse ? { ...rest, wholeCourse: true } : rest;
}

/** A condition as a group, and so are those of its lists. */
export function grouped(condition: Condition): Condition {
  const within = inside(condition, grouped);
  return groupOf(partOf(within).core) ? within : { all: [within] };
}

function ungrouped(condition: Condition): Condition {
  const within = inside(condition, ungrouped);
  const part = partOf(within);
  const only = groupOf(part.core)?.parts;
  const [first] = only ?? [];
  if (!first || only?.length !== 1) return within;
  // What is said of the group is then said of its one row.
  const plain = !part.negated && part.unrecorded === "open";
  return plain ? first : conditionOf(partOf(conditionOf({ ...part, core: first })));
}

/** The condition with what lies in its lists and in its groups changed; rows of a group stay rows. */
function inside(condition: Condition, change: (part: Condition) => Condition): Condition {
  const part = partOf(condition);
  const { core } = part;
  const group = groupOf(core);
  const rows = group?.parts.map((row) => (change === grouped ? inside(row, change) : change(row)));
  if (group && rows)
    return conditionOf({ ...part, core: group.how === "any" ? { any: rows } : { all: rows } });
  const next = Object.entries(core).map(([key, value]) =>
    (inner as readonly string[]).includes(key) ? [key, change(value)] : [key, value],
  );
  return conditionOf({ ...part, core: Object.fromEntries(next) });
}

function everywhere(criterion: Criterion, change: (part: Condition) => Condition): Criterion {
  return {
    ...criterion,
    population: change(criterion.population),
    exclusions: criterion.exclusions.map((one) => ({ ...one, when: change(one.when) })),
    met: change(criterion.met),
  };
}
