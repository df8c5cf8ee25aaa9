import type { Value } from "@/lib/records/column";
import type { Condition, OverList } from "./condition";
import type { Criterion, Outcome } from "./criterion";
import type { JudgedUnit, ListItem } from "./judged-unit";
import type { Truth } from "./kleene";
import { outcomeOf } from "./outcome";
import { listIn, truthOf } from "./truth";

/** A condition with what was found of the unit, and those that it is made of. */
export type Clause = {
  readonly condition: Condition;
  readonly truth: Truth;
  readonly parts: readonly Clause[];
  /** Of a comparison: the field and its value, undefined where it is not recorded. */
  readonly value?: { readonly field: string; readonly found: Value | undefined };
  /** Of a list: its items, and whether each is one that is asked for. */
  readonly items?: readonly { readonly item: ListItem; readonly asked: Truth }[];
  /** Of a total: what is known of it. */
  readonly sum?: number;
};

/** Why a unit is where it is: the step of the order in which reasons are looked at that settled it, and every clause. */
export type Explanation = {
  readonly outcome: Outcome | undefined;
  readonly settledBy: "population" | "treatment population" | "exclusion" | "exception" | "met";
  readonly population: Clause;
  readonly exclusions: readonly {
    readonly reason: string;
    readonly inWords: string;
    readonly clause: Clause;
  }[];
  readonly met: Clause;
};

/** The explanation of one unit, by the same evaluation that lib/protocol/outcome judges it by. */
export function explain(criterion: Criterion, unit: JudgedUnit): Explanation {
  const outcome = outcomeOf(criterion, unit);
  const population = clauseOf(criterion.population, unit);
  const exclusions = criterion.exclusions.map(({ reason, inWords, when }) => ({
    reason,
    inWords,
    clause: clauseOf(when, unit),
  }));
  const met = clauseOf(criterion.met, unit);
  return { outcome, settledBy: settledBy(), population, exclusions, met };

  function settledBy(): Explanation["settledBy"] {
    if (outcome === undefined) return "population";
    if (outcome.outcome === "excepted") return "exception";
    if (outcome.outcome === "excluded")
      return criterion.treatmentPopulation && unit.exclusion !== null
        ? "treatment population"
        : "exclusion";
    if (population.truth === undefined) return "population";
    return exclusions.some(({ clause }) => clause.truth === undefined) ? "exclusion" : "met";
  }
}

/** The condition with what was found of the unit. */
export function clauseOf(condition: Condition, unit: Pick<JudgedUnit, "fields" | "lists">): Clause {
  const parts = partsOf(condition).map((part) => clauseOf(part, unit));
  const clause = { condition, truth: truthOf(condition, unit), parts };
  if ("field" in condition || "recorded" in condition) {
    const field = "field" in condition ? condition.field : condition.recorded;
    return { ...clause, value: { field, found: unit.fields[field] } };
  }
  if (!isOverList(condition)) return clause;
  const items = unit.lists[listIn(condition)] ?? [];
  const asked = items.map((item) => ({
    item,
    asked: truthOf(askedOf(condition), { fields: item.fields, lists: {} }),
  }));
  return "total" in condition
    ? { ...clause, items: asked, sum: sumOf(condition.total, asked) }
    : { ...clause, items: asked };
}

function isOverList(condition: Condition): condition is OverList {
  return ["some", "every", "total", "nextTo", "between", "after"].some((word) => word in condition);
}

/** Which items of a list a condition is about. */
function askedOf(condition: OverList): Condition {
  if ("that" in condition) return condition.that;
  if ("nextTo" in condition) return { any: [condition.one, condition.other] };
  if ("between" in condition) return { any: [condition.one, condition.other, condition.lies] };
  return { any: [condition.each, condition.comes] };
}

function sumOf(fields: readonly string[], items: NonNullable<Clause["items"]>): number {
  const values = items.flatMap(({ item, asked }) =>
    asked ? fields.map((field) => item.fields[field]) : [],
  );
  const known = values.filter((value) => typeof value === "number");
  return Number(known.reduce((sum, value) => sum + value, 0).toFixed(6));
}

/** The conditions that it is made of, one level down; those of a list's items are not among them. */
function partsOf(condition: Condition): readonly Condition[] {
  if ("all" in condition) return condition.all;
  if ("any" in condition) return condition.any;
  if ("not" in condition) return [condition.not];
  return "known" in condition ? [condition.known] : [];
}
