/**
 * What a criterion demands of a unit: a small tree of data, shown as a sentence, never typed or evaluated as text.
 *
 * Every condition is true, false or unknown (Kleene's three values): what is not recorded is unknown, and stays so
 * through `all`, `any` and `not` unless the rest settles it. A limit of null is one that nobody has set: unknown.
 * Over a list, an item of which something is unknown leaves the answer unknown where it could change it.
 */
export type Condition =
  | Comparison
  /** The field has a value: true or false, never unknown. */
  | { readonly recorded: string }
  /** It is known that the condition holds: true or false, never unknown. */
  | { readonly known: Condition }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition }
  | OverList;

export type Comparison =
  | { readonly field: string; readonly is: string | number | boolean }
  | { readonly field: string; readonly among: readonly string[] }
  | { readonly field: string; readonly atLeast: number | null }
  | { readonly field: string; readonly atMost: number | null };

export type OverList =
  /** Some item of the list is such that … */
  | { readonly some: string; readonly that: Condition }
  /** Every item of the list that … is such that … */
  | { readonly every: string; readonly that: Condition; readonly are: Condition }
  /** The fields added up over the items that …; no field is ever below 0. */
  | (Total & { readonly atLeast: number | null })
  | (Total & { readonly atMost: number | null })
  /** Somewhere the one and the other follow each other directly, in either order. */
  | { readonly nextTo: string; readonly one: Condition; readonly other: Condition }
  /** Wherever the one and the other follow each other, in either order, such an item lies in between. */
  | {
      readonly between: string;
      readonly one: Condition;
      readonly other: Condition;
      readonly lies: Condition;
    }
  /** After each item that … there comes, sooner or later, one that … */
  | { readonly after: string; readonly each: Condition; readonly comes: Condition };

export type Total = {
  readonly total: readonly string[];
  readonly of: string;
  readonly that: Condition;
};

/** Always true; of a list, every item. */
export const whatever: Condition = { all: [] };
