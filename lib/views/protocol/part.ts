import type { Condition } from "@/lib/protocol/condition";

/**
 * A condition as people choose it: what is asked, whether it is asked the other way round, and what counts where it
 * is not recorded: it stays open, it does not hold, or it holds.
 */
export type Part = {
  /** Neither `not` nor `known`. */
  readonly core: Condition;
  readonly negated: boolean;
  readonly unrecorded: "open" | "no" | "yes";
};

/** Takes `not` and `known` off a condition; nested ones come to the same as one of each. */
export function partOf(condition: Condition): Part {
  if ("known" in condition) {
    const part = partOf(condition.known);
    return part.unrecorded === "open" ? { ...part, unrecorded: "no" } : part;
  }
  if ("not" in condition) {
    const { core, negated, unrecorded } = partOf(condition.not);
    const turned = { open: "open", no: "yes", yes: "no" } as const;
    return { core, negated: !negated, unrecorded: turned[unrecorded] };
  }
  return { core: condition, negated: false, unrecorded: "open" };
}

/** The condition of a part: the inverse of {@link partOf}. */
export function conditionOf({ core, negated, unrecorded }: Part): Condition {
  const turned: Condition = { not: core };
  if (unrecorded === "open") return negated ? turned : core;
  if (unrecorded === "no") return { known: negated ? turned : core };
  return { not: { known: negated ? core : turned } };
}

/** The keys under which {@link conditionOf} puts the core of a part. */
export function wrappersOf({ negated, unrecorded }: Part): readonly string[] {
  if (unrecorded === "open") return negated ? ["not"] : [];
  if (unrecorded === "no") return negated ? ["known", "not"] : ["known"];
  return negated ? ["not", "known"] : ["not", "known", "not"];
}
