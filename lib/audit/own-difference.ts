import type { Comparison } from "./comparison";
import { type Compared, type Difference, differenceOf } from "./difference";
import type { Figure } from "./figure";
import { tooFewToTell } from "./too-few-to-tell";

/** Why a difference has no interval that could be read. */
export type NoDifference =
  | "nothing-to-compare"
  | "too-few-units"
  | "too-few-patients"
  | "no-variation";

/**
 * A clinician's figure less what it is compared with. Only intervals that allow for units of one patient go into it:
 * with plain ones a difference would look settled sooner than it is. The two are taken as independent, as the
 * comparison leaves the clinician's own units out (or is of earlier days).
 */
export function ownDifference(figure: Figure, comparison: Comparison): Difference | NoDifference {
  const other = comparedWith(figure, comparison);
  if (figure.estimate === null || !other) return "nothing-to-compare";
  if (tooFewToTell(figure)) return "too-few-units";
  if (!figure.clustered || !other.clustered) return "too-few-patients";
  const difference = differenceOf(figure, other) ?? "too-few-patients";
  // Medians of values that are all alike have ends without width, which say nothing of chance.
  if (typeof difference !== "string" && difference.lower === difference.upper)
    return "no-variation";
  return difference;
}

function comparedWith(figure: Figure, comparison: Comparison): Compared | null {
  const { estimate, clustered, numerator, n } = comparison;
  if (estimate === null) return null;
  if (figure.kind === "median") return { kind: "median", estimate, clustered };
  return numerator === null
    ? null
    : { kind: "rate", estimate, clustered, numerator, denominator: n };
}
