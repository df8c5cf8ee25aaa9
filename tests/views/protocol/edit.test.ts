import fc from "fast-check";
import { expect, test } from "vitest";
import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import type { Field } from "@/lib/protocol/field";
import { readCriterion } from "@/lib/protocol/read-criterion";
import { truthOf } from "@/lib/protocol/truth";
import { unitFields, unitLists } from "@/lib/protocol/vocabulary";
import { fieldAbout, groupOf } from "@/lib/views/protocol/condition-words";
import { moved, partAt, replacedAt } from "@/lib/views/protocol/edit/at-path";
import {
  aboutUnit,
  newCriterion,
  newExclusion,
  newRow,
  reworded,
} from "@/lib/views/protocol/edit/beginnings";
import {
  compared,
  comparisonChoices,
  comparisonOf,
  isRow,
  rowOf,
} from "@/lib/views/protocol/edit/comparisons";
import { editable, grouped, sendable, settled } from "@/lib/views/protocol/edit/editable";
import { begun, edited } from "@/lib/views/protocol/edit/history";
import {
  isOverList,
  sentence,
  sentenceChoices,
  sentenceOf,
  totalEndOf,
  totalEnds,
  withTotalEnd,
  withTotalLimit,
} from "@/lib/views/protocol/edit/list-sentences";
import { fieldChoices, unitChoices } from "@/lib/views/protocol/edit/vocabulary-choices";
import { conditionOf, partOf, wrappersOf } from "@/lib/views/protocol/part";
import { arbitraryCriterion } from "../../protocol/arbitrary-criterion";

// Expected values are properties of editing: what is shown can be sent back, and nothing changes that nobody changed.

const terms = {
  steps: [{ value: "dam", words: "rubber dam" }],
  tasks: [{ value: "line-rinse", words: "line rinse" }],
  reasons: [],
};

test("what the editor shows of a criterion comes back as it was", () => {
  for (const one of defaults) {
    const shown = editable(one);
    expect(settled(shown)).toEqual(one);
    expect(readCriterion(sendable(shown))).toEqual({ read: sendable(shown) });
    for (const condition of [
      shown.population,
      shown.met,
      ...shown.exclusions.map(({ when }) => when),
    ])
      expect(groupOf(partOf(condition).core)).not.toBeNull();
  }
});

test("a condition taken apart and put together means the same", () => {
  const fields = [{}, { apex: "open" }, { apex: "closed" }];
  const core: Condition = { field: "apex", is: "open" };
  const wrapped = fc.letrec<{ condition: Condition }>((tie) => ({
    condition: fc.oneof(
      fc.constant(core),
      tie("condition").map((not): Condition => ({ not })),
      tie("condition").map((known): Condition => ({ known })),
    ),
  }));
  fc.assert(
    fc.property(wrapped.condition, (condition) => {
      const part = partOf(condition);
      const again = conditionOf(part);
      for (const one of fields)
        expect(truthOf(again, { fields: one, lists: {} })).toBe(
          truthOf(condition, { fields: one, lists: {} }),
        );
      expect(partOf(again)).toEqual(part);
      expect(partAt(again, wrappersOf(part))).toEqual(core);
    }),
  );
});

test("grouping and settling change no meaning", () => {
  const value = (field: Field, seed: number) => {
    if (seed % 4 === 0) return undefined;
    if (field.kind === "number") return seed % 20;
    if (field.kind === "flag") return seed % 2 === 0;
    return field.choices?.[seed % field.choices.length] ?? "1";
  };
  const valuesOf = (fields: readonly Field[], seeds: readonly number[]) =>
    Object.fromEntries(
      fields.map((field, place) => [field.name, value(field, seeds[place % seeds.length] ?? 0)]),
    );
  const seen = new Set<unknown>();
  const seeds = fc.array(fc.nat(100), { minLength: 7, maxLength: 7 });
  fc.assert(
    fc.property(arbitraryCriterion, seeds, (criterion, numbers) => {
      const lists = unitLists[criterion.unit].map(({ name, fields }) => {
        const items = [0, 1].map((rank) => ({
          ...{ fields: valuesOf(fields, numbers.slice(rank)), place: "MB1", rank },
          ...{ loose: false, row: null },
        }));
        return [name, items];
      });
      const unit = {
        fields: valuesOf(unitFields[criterion.unit], numbers),
        lists: Object.fromEntries(lists),
      };
      const truth = truthOf(criterion.met, unit);
      seen.add(truth);
      expect(truthOf(grouped(criterion.met), unit)).toBe(truth);
      expect(truthOf(settled(criterion).met, unit)).toBe(truth);
      expect(truthOf(settled(editable(criterion)).met, unit)).toBe(truth);
      expect(settled(settled(criterion))).toEqual(settled(criterion));
    }),
    { numRuns: 500 },
  );
  expect(seen).toEqual(new Set([true, false, undefined]));
});

test("every comparison that can be chosen is the one that is then shown", () => {
  for (const { value: unit } of unitChoices)
    for (const { options } of fieldChoices({ unit, own: {} }, terms))
      for (const { value } of options) {
        const field = fieldAbout({ unit, own: {} }, value);
        for (const choice of comparisonChoices(field.kind)) {
          const part = compared(rowOf(field), field, choice.value);
          expect(isRow(part.core)).toBe(true);
          expect(comparisonOf(partOf(conditionOf(part)))).toBe(choice.value);
        }
      }
});

test("a value is kept where it fits another comparison", () => {
  const about = { unit: "canal", own: {} } as const;
  const length = fieldAbout(about, "working_length_mm");
  const atLeast = { ...rowOf(length), core: { field: length.name, atLeast: 20 } };
  expect(conditionOf(compared(atLeast, length, "over"))).toEqual({
    not: { field: length.name, atMost: 20 },
  });
  const apex = fieldAbout(about, "apex");
  expect(conditionOf(compared(rowOf(apex), apex, "among"))).toEqual({
    field: "apex",
    among: ["closed"],
  });
});

test("every sentence about a list that can be chosen is the one that is then shown, and its conditions stay", () => {
  const edta: Condition = { field: "irrigant", is: "edta" };
  for (const list of unitLists.canal) {
    const before = partOf({ some: list.name, that: edta });
    for (const { value } of sentenceChoices(list)) {
      const part = sentence(value, list, before);
      expect(isOverList(part.core)).toBe(true);
      expect(sentenceOf(partOf(conditionOf(part)))).toBe(value);
      expect(JSON.stringify(part.core)).toContain('"irrigant"');
    }
  }
});

test("a total keeps its limit when its end is another", () => {
  const [list] = unitLists.canal;
  if (!list) throw new Error("A canal has deliveries.");
  const total = withTotalLimit(sentence("total", list, partOf({ all: [] })), 15);
  for (const { value } of totalEnds) {
    const part = partOf(conditionOf(withTotalEnd(total, value)));
    expect(totalEndOf(part)).toBe(value);
    expect(Object.values(part.core)).toContain(15);
  }
});

test("a new criterion about any unit can be read once it demands something and has words", () => {
  for (const { value: unit } of unitChoices) {
    const about = { unit, own: {} };
    const begin = aboutUnit(newCriterion(), unit);
    const words = { title: "T", statement: "S", rationale: "R", source: "S" };
    const met = newRow(about, terms) ?? { some: "upkeep/line-rinse", that: { all: [] } };
    expect(readCriterion({ ...begin, ...words, met })).toHaveProperty("read");
    const left = { ...newExclusion(about, terms), inWords: "some", reason: "some" };
    expect(readCriterion({ ...begin, ...words, met, exclusions: [left] })).toHaveProperty("read");
  }
});

test("the code of what is left out follows its words until it was somebody else's", () => {
  const begun: Criterion["exclusions"][number] = { reason: "", inWords: "", when: { all: [] } };
  const typed = reworded(reworded(begun, "Wisdom"), "Wisdom teeth (8)");
  expect(typed).toMatchObject({ reason: "wisdom-teeth-8", inWords: "Wisdom teeth (8)" });
  expect(reworded({ ...begun, reason: "open-apex", inWords: "open" }, "wide").reason).toBe(
    "open-apex",
  );
});

test("a part is replaced, taken out and moved by its path", () => {
  const tree = { met: { all: [1, 2, 3] }, more: true };
  expect(replacedAt(tree, ["met", "all", 1], 9)).toEqual({ met: { all: [1, 9, 3] }, more: true });
  expect(replacedAt(tree, ["met", "all", 0], undefined).met.all).toEqual([2, 3]);
  expect(replacedAt(tree, [], { met: { all: [] }, more: false }).more).toBe(false);
  expect(tree.met.all).toEqual([1, 2, 3]);
  expect(moved([1, 2, 3], 0, 1)).toEqual([2, 1, 3]);
  expect(moved([1, 2, 3], 0, -1)).toEqual([1, 2, 3]);
  expect(moved([1, 2, 3], 2, 1)).toEqual([1, 2, 3]);
});

test("undo and redo go step by step; typing on in one field is one step", () => {
  let history = begun("a");
  const to = (value: string, where: string | null = null) => {
    history = edited(history, { to: value, where });
  };
  to("b");
  to("bc", "title");
  to("bcd", "title");
  history = edited(history, "undo");
  expect(history.now).toBe("b");
  history = edited(history, "redo");
  expect(history.now).toBe("bcd");
  history = edited(edited(edited(history, "undo"), "undo"), "undo");
  expect(history).toMatchObject({ now: "a", past: [] });
  to("z");
  expect(edited(history, "redo").now).toBe("z");
});
