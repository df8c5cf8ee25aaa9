import { type Condition, whatever } from "@/lib/protocol/condition";
import type { Criterion, Exclusion, UnitKind } from "@/lib/protocol/criterion";
import { codeOf } from "@/lib/protocol/own-codes";
import type { About } from "../about";
import { conditionOf } from "../part";
import { rowOf } from "./comparisons";
import { sentence } from "./list-sentences";
import { firstField, firstList, type Terms } from "./vocabulary-choices";

/** A criterion of one's own as it begins: canals of the treatment population, nothing demanded yet. */
export function newCriterion(): Criterion {
  return {
    id: "own-new",
    title: "",
    statement: "",
    rationale: "",
    source: "",
    ...ofUnit("canal"),
    exclusions: [],
    target: 0.9,
    targetSource: "The practice's own choice.",
    completenessFloor: 0.9,
  };
}

/** The criterion about another unit: what only the former has is given up. */
export function aboutUnit(criterion: Criterion, unit: UnitKind): Criterion {
  return { ...criterion, ...ofUnit(unit), exclusions: [] };
}

/** A first row; undefined where such a unit has no fields. */
export function newRow(about: About, terms: Terms): Condition | undefined {
  const field = firstField(about, terms);
  return field && conditionOf(rowOf(field));
}

/** A first sentence about a list; undefined where such a unit has none. */
export function newSentence(about: About, terms: Terms): Condition | undefined {
  const list = firstList(about, terms);
  if (!list) return undefined;
  return conditionOf(
    sentence("some", list, { core: whatever, negated: false, unrecorded: "open" }),
  );
}

/** Something more that is left out. */
export function newExclusion(about: About, terms: Terms): Exclusion {
  const row = newRow(about, terms);
  const sentences = newSentence(about, terms);
  return { reason: "", inWords: "", when: { all: [row ?? sentences ?? whatever] } };
}

/** What is left out in other words; the code that it counts under follows its words as long as it was made of them. */
export function reworded(exclusion: Exclusion, inWords: string): Exclusion {
  const { reason } = exclusion;
  const follows = reason === "" || reason === codeOf(exclusion.inWords);
  return { ...exclusion, inWords, reason: follows ? codeOf(inWords) : reason };
}

function ofUnit(unit: UnitKind) {
  return {
    unit,
    treatmentPopulation: unit === "canal",
    population: whatever,
    met: whatever,
    exceptions: unit === "chair-day" ? null : { steps: [], reasons: [] },
    byClinician: unit !== "chair-day",
  };
}
