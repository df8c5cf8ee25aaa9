import type { Comparison, Condition } from "@/lib/protocol/condition";
import type { Field } from "@/lib/protocol/field";
import type { Part } from "../part";

/** A comparison as people choose it. */
export type ComparisonName =
  | "is"
  | "is-not"
  | "among"
  | "not-among"
  | "least"
  | "most"
  | "under"
  | "over"
  | "recorded"
  | "not-recorded";

/** The row of a condition: a comparison of a field, or whether it is recorded. */
export type RowCore = Comparison | { readonly recorded: string };

type Choice = { readonly value: ComparisonName; readonly words: string };

/** What can be asked of a field of that kind. */
export function comparisonChoices(kind: Field["kind"]): readonly Choice[] {
  return [...choices[kind], ...recording];
}

export function isRow(core: Condition): core is RowCore {
  return "field" in core || "recorded" in core;
}

export function fieldOfRow(core: RowCore): string {
  return "recorded" in core ? core.recorded : core.field;
}

export function comparisonOf({ core, negated }: Part): ComparisonName {
  if ("recorded" in core) return negated ? "not-recorded" : "recorded";
  if ("is" in core && typeof core.is !== "boolean") return negated ? "is-not" : "is";
  if ("among" in core) return negated ? "not-among" : "among";
  if ("atLeast" in core) return negated ? "under" : "least";
  if ("atMost" in core) return negated ? "over" : "most";
  // A yes or no: the value itself is turned round.
  return "is";
}

/** The part with another comparison of the same field; a value is kept where it still fits. */
export function compared(part: Part, field: Field, to: ComparisonName): Part {
  const name = field.name;
  const old = valuesOf(part.core);
  const core: RowCore =
    to === "recorded" || to === "not-recorded"
      ? { recorded: name }
      : to === "among" || to === "not-among"
        ? { field: name, among: old.texts }
        : to === "least" || to === "under"
          ? { field: name, atLeast: old.number }
          : to === "most" || to === "over"
            ? { field: name, atMost: old.number }
            : { field: name, is: firstValue(field, old) };
  const negated = ["is-not", "not-among", "under", "over", "not-recorded"].includes(to);
  // Whether something is recorded is always known.
  return { core, negated, unrecorded: "recorded" in core ? "open" : part.unrecorded };
}

/** The row of another field, with the comparison that comes first for its kind and no value yet. */
export function rowOf(field: Field): Part {
  const [first] = choices[field.kind];
  const nothing: Part = { core: { recorded: field.name }, negated: false, unrecorded: "open" };
  return compared(nothing, field, first?.value ?? "is");
}

function valuesOf(core: Condition) {
  const single = "is" in core ? core.is : undefined;
  const among = "among" in core ? core.among : [];
  const limit = "atLeast" in core ? core.atLeast : "atMost" in core ? core.atMost : null;
  return {
    texts: typeof single === "string" && single !== "" ? [single] : [...among],
    number: typeof single === "number" ? single : limit,
  };
}

function firstValue(
  field: Field,
  old: { texts: readonly string[]; number: number | null },
): string | number | boolean {
  if (field.kind === "flag") return true;
  if (field.kind === "number") return old.number ?? 0;
  return old.texts[0] ?? field.choices?.[0] ?? "";
}

const recording: readonly Choice[] = [
  { value: "recorded", words: "is recorded" },
  { value: "not-recorded", words: "is not recorded" },
];
const choices: Readonly<Record<Field["kind"], readonly Choice[]>> = {
  number: [
    { value: "least", words: "is at least" },
    { value: "most", words: "is at most" },
    { value: "under", words: "is under" },
    { value: "over", words: "is over" },
    { value: "is", words: "is exactly" },
    { value: "is-not", words: "is not exactly" },
  ],
  choice: [
    { value: "is", words: "is" },
    { value: "is-not", words: "is not" },
    { value: "among", words: "is one of" },
    { value: "not-among", words: "is none of" },
  ],
  flag: [{ value: "is", words: "is" }],
  text: [
    { value: "is", words: "is" },
    { value: "is-not", words: "is not" },
  ],
};
