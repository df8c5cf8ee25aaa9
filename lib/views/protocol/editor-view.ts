import { formatSteps, formatTasks } from "@/lib/protocol/condition-sense";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { day } from "../day";
import { ownReasonWords, stepWords, taskWords } from "./code-words";
import { countedQuarter } from "./counted-quarter";
import type { CriterionState } from "./criterion-state";
import { newCriterion } from "./edit/beginnings";
import { editable } from "./edit/editable";
import type { Option, Terms } from "./edit/vocabulary-choices";
import { type OwnWords, ownWordsOf, type TermKind } from "./own-words";
import { nextWords } from "./protocol-view";

/** All that the editor needs to begin. */
export type EditorView = {
  readonly criterion: Criterion;
  /** Not there yet: its unit can be chosen, and its name is made from its title. */
  readonly isNew: boolean;
  readonly title: string;
  readonly own: OwnWords;
  readonly terms: Terms;
  readonly practice: string;
  /** Those whose protocol the viewer may change. */
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly today: string;
  /** From when a version may begin, in words. */
  readonly fromWords: string;
  /** The quarter that is counted, in words; null where there are no records. */
  readonly counted: string | null;
};

type Term = {
  readonly kind: TermKind;
  readonly code: string;
  readonly words: string;
  readonly retired: boolean;
};

export function editorView(of: {
  /** Null for a new one. */
  readonly state: CriterionState | null;
  readonly practice: { readonly code: string };
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly terms: readonly Term[];
  readonly today: string;
  /** First and last recorded day; null where there are no records. */
  readonly firstDay: string | null;
  readonly lastDay: string | null;
}): EditorView {
  const { state, today, firstDay, lastDay } = of;
  const criterion = state?.latest ?? newCriterion();
  const own = ownWordsOf(of.terms);
  return {
    criterion: editable(criterion),
    isNew: state === null,
    title: state ? state.latest.title : "A criterion of your own",
    own,
    terms: termsOf(of.terms, criterion, own),
    practice: of.practice.code,
    practices: of.practices.map(({ code, name }) => ({ code, name })),
    today,
    fromWords: fromWords(state, today),
    counted: firstDay && lastDay ? countedQuarter(firstDay, lastDay).words : null,
  };
}

function fromWords(state: CriterionState | null, today: string): string {
  const from = state?.everBefore
    ? `From today, ${day(today)}, or later: a change never alters a past figure.`
    : "Any day, also one that has passed: it was in force on none before today, so no past figure is altered. Overall scores count it from today.";
  const next = state && nextWords(state);
  return next ? `${from} What was planned stays: it ${next}.` : from;
}

/** What is offered; a retired term only where the criterion bears it already. */
function termsOf(terms: readonly Term[], criterion: Criterion, own: OwnWords): Terms {
  const borne = JSON.stringify(criterion);
  const offered = (kind: TermKind) =>
    terms.flatMap((term) =>
      term.kind === kind && (!term.retired || borne.includes(term.code)) ? [term.code] : [],
    );
  const option =
    (words: (code: string, own: OwnWords) => string) =>
    (value: string): Option => ({
      value,
      words: words(value, own),
    });
  const reasons = [
    ...defaults.flatMap(({ exceptions }) => exceptions?.reasons ?? []),
    ...(criterion.exceptions?.reasons ?? []),
    ...offered("reason"),
  ];
  return {
    steps: [...formatSteps, ...offered("step")].map(option(stepWords)),
    tasks: [...formatTasks, ...offered("task")].map(option(taskWords)),
    reasons: [...new Set(reasons)]
      .map(option(ownReasonWords))
      .sort((one, other) => one.words.localeCompare(other.words)),
  };
}
