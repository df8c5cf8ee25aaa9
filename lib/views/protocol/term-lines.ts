import type { TermKind } from "./own-words";

export type TermLine = {
  readonly code: string;
  readonly words: string;
  readonly retired: boolean;
};

/** The own terms of a kind. */
export type TermGroup = {
  readonly kind: TermKind;
  readonly title: string;
  /** What they are for, and where records name them. */
  readonly says: string;
  /** What one is called, as "step". */
  readonly one: string;
  readonly lines: readonly TermLine[];
};

type Term = TermLine & { readonly kind: TermKind };

/** A practice's own terms by kind, those in use first. */
export function termGroups(terms: readonly Term[]): TermGroup[] {
  return kinds.map((kind) => ({
    ...kind,
    lines: terms
      .filter((term) => term.kind === kind.kind)
      .sort((one, other) => Number(one.retired) - Number(other.retired))
      .map(({ code, words, retired }) => ({ code, words, retired })),
  }));
}

const kinds: readonly Omit<TermGroup, "lines">[] = [
  {
    kind: "step",
    title: "Own steps",
    one: "step",
    says: "What is done at a visit or in a canal. Records name it in the table steps, by its code.",
  },
  {
    kind: "task",
    title: "Own upkeep tasks",
    one: "task",
    says: "What is done to a chair or device on a day. Records name it in the table upkeep, by its code.",
  },
  {
    kind: "reason",
    title: "Own reasons for exceptions",
    one: "reason",
    says: "Why a criterion may rightly not be met. Records name it in the table exceptions, by its code.",
  },
];
