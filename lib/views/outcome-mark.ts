import type { Criterion, Outcome } from "@/lib/protocol/criterion";
import { ownReasonWords } from "./protocol/code-words";
import type { OwnWords } from "./protocol/own-words";
import { reasonWords } from "./reason-words";

/** What became of a unit, as a mark and in words. @param own the practice's own terms */
export function outcomeMark(
  criterion: Criterion,
  outcome: Outcome,
  own: OwnWords = {},
): { readonly mark: string; readonly outcome: string } {
  if (outcome.outcome === "excluded") {
    const named = criterion.exclusions.find((one) => one.reason === outcome.reason);
    return { mark: "none", outcome: `left out: ${named?.inWords ?? reasonWords(outcome.reason)}` };
  }
  if (outcome.outcome === "excepted")
    return { mark: "excepted", outcome: `excepted: ${ownReasonWords(outcome.reason, own)}` };
  return {
    mark: { met: "met", "not met": "missed", "not recorded": "missing" }[outcome.outcome],
    outcome: outcome.outcome,
  };
}
