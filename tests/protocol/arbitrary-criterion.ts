import * as fc from "fast-check";
import type { Condition } from "@/lib/protocol/condition";
import { type Criterion, type UnitKind, unitKinds } from "@/lib/protocol/criterion";
import type { Field, List } from "@/lib/protocol/field";
import { fieldOf, unitFields, unitLists } from "@/lib/protocol/vocabulary";

const steps = ["step/dam", "step/patency", "step/line-check"];
const reasons = ["first-reason", "second-reason"];

/** Criteria of any kind of unit with random trees over everything that such a unit has. */
export const arbitraryCriterion: fc.Arbitrary<Criterion> = fc
  .constantFrom(...unitKinds)
  .chain((unit) =>
    fc.record({
      id: fc.constant("own-random"),
      title: fc.constant("Random"),
      statement: fc.constant("Random."),
      rationale: fc.constant("To be checked."),
      source: fc.constant("None."),
      unit: fc.constant(unit),
      treatmentPopulation: fc.boolean(),
      population: conditionOf(unit, 1),
      exclusions: fc
        .array(conditionOf(unit, 1), { maxLength: 2 })
        .map((some) =>
          some.map((when, place) => ({ reason: reasons[place] ?? "", inWords: "some", when })),
        ),
      met: conditionOf(unit, 3),
      exceptions: fc.constantFrom(
        null,
        { steps: [], reasons: [] },
        { steps: ["dam", "patency"], reasons: [] },
      ),
      target: fc.constant(0.9),
      targetSource: fc.constant("None."),
      completenessFloor: fc.constantFrom(null, 0.9),
      byClinician: fc.boolean(),
    }),
  );

function conditionOf(unit: UnitKind, depth: number): fc.Arbitrary<Condition> {
  const fields = unitFields[unit].concat(
    unit === "chair-day" ? [] : steps.flatMap((step) => fieldOf(unit, step) ?? []),
  );
  // What other criteria lack is not asked of a random one, as it would ask for every other criterion as well.
  const lists = unitLists[unit].filter(({ name }) => name !== "gaps");
  const upkeep = unit === "chair-day" ? ["upkeep/line-rinse", "upkeep/line-dry"] : [];
  const all = [...lists, ...upkeep.map(upkeepList)];
  return tree([...(fields.length > 0 ? [ofFields(fields)] : []), ...all.map(overList)], depth);
}

function upkeepList(name: string): List {
  return {
    name,
    words: name,
    item: "device",
    ordered: false,
    fields: [
      {
        name: "status",
        words: "status",
        kind: "choice",
        choices: ["done", "not-done", "out-of-service"],
      },
      { name: "duration_s", words: "time", kind: "number" },
    ],
  };
}

function tree(leaves: readonly fc.Arbitrary<Condition>[], depth: number): fc.Arbitrary<Condition> {
  const leaf = fc.oneof(...leaves);
  if (depth === 0) return leaf;
  const part = tree(leaves, depth - 1);
  return fc.oneof(
    { weight: 3, arbitrary: leaf },
    { weight: 2, arbitrary: fc.array(part, { maxLength: 3 }).map((all): Condition => ({ all })) },
    { weight: 2, arbitrary: fc.array(part, { maxLength: 3 }).map((any): Condition => ({ any })) },
    { weight: 1, arbitrary: part.map((not): Condition => ({ not })) },
    { weight: 1, arbitrary: part.map((known): Condition => ({ known })) },
  );
}

function ofFields(fields: readonly Field[]): fc.Arbitrary<Condition> {
  return fc.constantFrom(...fields).chain((field): fc.Arbitrary<Condition> => {
    const { name } = field;
    const recorded = fc.constant<Condition>({ recorded: name });
    if (field.kind === "number") {
      const limit = fc.constantFrom(0, 1, 2, 3, 5, 8, 30, 60, 500, null);
      return fc.oneof(
        recorded,
        limit.map((atLeast): Condition => ({ field: name, atLeast })),
        limit.map((atMost): Condition => ({ field: name, atMost })),
      );
    }
    if (field.kind === "flag")
      return fc.oneof(
        recorded,
        fc.boolean().map((is): Condition => ({ field: name, is })),
      );
    const choices = field.choices ?? ["L-1", "A-1", "L-2"];
    return fc.oneof(
      recorded,
      fc.constantFrom(...choices).map((is): Condition => ({ field: name, is })),
      fc.subarray([...choices]).map((among): Condition => ({ field: name, among })),
    );
  });
}

function overList(list: List): fc.Arbitrary<Condition> {
  const of = list.name;
  const part = tree([ofFields(list.fields)], 1);
  const numbers = list.fields.filter(({ kind }) => kind === "number").map(({ name }) => name);
  const limit = fc.constantFrom(0, 2.5, 6, 10, 60, null);
  const total = fc.subarray(numbers, {
    minLength: Math.min(1, numbers.length),
    maxLength: Math.min(2, numbers.length),
  });
  return fc.oneof(
    part.map((that): Condition => ({ some: of, that })),
    fc.tuple(part, part).map(([that, are]): Condition => ({ every: of, that, are })),
    ...(numbers.length > 0
      ? [
          fc
            .tuple(total, part, limit)
            .map(([sum, that, atLeast]): Condition => ({ total: sum, of, that, atLeast })),
          fc
            .tuple(total, part, limit)
            .map(([sum, that, atMost]): Condition => ({ total: sum, of, that, atMost })),
        ]
      : []),
    ...(list.ordered
      ? [
          fc.tuple(part, part).map(([one, other]): Condition => ({ nextTo: of, one, other })),
          fc
            .tuple(part, part, part)
            .map(([one, other, lies]): Condition => ({ between: of, one, other, lies })),
          fc.tuple(part, part).map(([each, comes]): Condition => ({ after: of, each, comes })),
        ]
      : []),
  );
}
