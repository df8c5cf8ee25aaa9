import fc from "fast-check";
import { expect, test } from "vitest";
import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { conditionWords } from "@/lib/views/protocol/condition-words";
import { criterionWords } from "@/lib/views/protocol/criterion-words";
import { arbitraryCriterion } from "../../protocol/arbitrary-criterion";

// Expected sentences are the project's own wording, worked by hand from each criterion's definition.

const of = (id: string) => defaults.find((one) => one.id === id) as Criterion;
const met = (id: string) => criterionWords(of(id), {}).met;

test.each([
  ["isolation", "the step “rubber dam” was done."],
  ["timer-reset", "the timer was started afresh."],
  [
    "hypochlorite-floor",
    "the volume of all deliveries of hypochlorite in the whole course together is 10 mL or more.",
  ],
  [
    "chelator",
    "the time it flowed and the time it was left in place of all deliveries of EDTA in the whole course where the strength is 15 to 17 % together are 60 s or more.",
  ],
  [
    "rinse-after-chelator",
    "after each delivery of EDTA, citric acid or HEDP at the visit there comes one of saline, water or hypochlorite.",
  ],
  [
    "no-hypochlorite-chlorhexidine-contact",
    "wherever a delivery of hypochlorite and one of chlorhexidine follow each other at the visit, one of saline or water lies in between.",
  ],
  [
    "main-irrigant",
    "the irrigant of largest known volume is hypochlorite and of every delivery of hypochlorite at the visit, the strength is 0.5 to 6 %.",
  ],
  ["flow-limit", "the flow is at or under a limit that is not set yet."],
  [
    "use-limit",
    "the number of the use is 4 or less and either the instrument is not for single use or the number of the use is 1 or less.",
  ],
])("%s reads as a person would say it", (id, words) => {
  expect(met(id)).toBe(words);
});

test("a group of choices that each have parts is told apart by more than commas", () => {
  expect(met("length-confirmed")).toBe(
    "the length was found by apex locator, radiograph or both together; or how the length was found is not recorded and either the step “apex locator” was done or the step “radiograph of the working length” was done.",
  );
});

test("what is not, and what is not recorded, is said", () => {
  const say = (condition: Condition) => conditionWords(condition, { unit: "canal", own: {} });
  const long: Condition = { field: "working_length_mm", atLeast: 20 };
  const open: Condition = { field: "apex", is: "open" };
  expect(say(long)).toBe("the working length is 20 mm or more");
  expect(say({ not: long })).toBe("the working length is under 20 mm");
  expect(say({ not: open })).toBe("the apex is not open");
  expect(say({ known: open })).toBe("it is known that the apex is open");
  expect(say({ not: { known: open } })).toBe("the apex is not open, or that is not recorded");
  expect(say({ not: { recorded: "apex" } })).toBe("the apex is not recorded");
  expect(say({ field: "filled", is: false })).toBe("the canal was not filled");
  expect(say({ not: { any: [open, long] } })).toBe(
    "it is not so that either the apex is open or the working length is 20 mm or more",
  );
  expect(say({ not: { some: "deliveries", that: { field: "delivery", is: "syringe" } } })).toBe(
    "there is no delivery by syringe at the visit",
  );
});

test("a practice's own terms are said in its words, and by their code where it has none", () => {
  const photo: Condition = { field: "step/own-photo", is: "done" };
  const say = (own: Record<string, string>) => conditionWords(photo, { unit: "visit", own });
  expect(say({ "step/own-photo": "photograph of the dam" })).toBe(
    "the step “photograph of the dam” was done",
  );
  expect(say({})).toBe("the step “photo” was done");
});

test("a criterion states whom it counts, what it leaves out, its exceptions, evidence and floor", () => {
  const words = criterionWords(of("hypochlorite-floor"), {});
  expect(words.population).toBe(
    "Canals where the canal was filled. Only canals that were prepared, at visits for first treatment or retreatment that were not abandoned.",
  );
  expect(words.leftOut.map(({ reason }) => reason)).toEqual([
    ...["abandoned", "the treatment", "not prepared"],
    ...["primary tooth", "open apex"],
  ]);
  expect(words.exceptions).toEqual(["allergy", "the patient could not tolerate it"]);
  expect(words.evidence).toEqual([
    "of all deliveries in the whole course: the irrigant and the volume",
  ]);
  expect([words.target, words.floor]).toEqual([
    "80 % or more",
    "Under 90 % recorded the figure is not assessable.",
  ]);
  expect(criterionWords(of("traceable"), {}).floor).toMatch(/^None/);
  expect(criterionWords(of("line-rinse"), {}).exceptions).toBeNull();
  expect(criterionWords(of("flow-limit"), {}).exceptions).toEqual([]);
});

test("every criterion has words in every part, without a code of the record format", () => {
  fc.assert(
    fc.property(fc.oneof(arbitraryCriterion, fc.constantFrom(...defaults)), (criterion) => {
      const { whole, evidence } = criterionWords(criterion, {});
      for (const text of [whole, ...evidence]) {
        expect(text).not.toMatch(/undefined|\[object|null|NaN| {2}/);
        expect(text).not.toMatch(/\b(naocl|chx|step\/|upkeep\/|\w+_\w+)\b/);
      }
    }),
    { numRuns: 300 },
  );
});
