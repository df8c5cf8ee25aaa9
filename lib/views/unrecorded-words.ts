import type { Criterion } from "@/lib/protocol/criterion";

/** Said of several criteria together: a rate has what is not recorded among its units, and never under "not met". */
export const unrecordedOfAll =
  "What is not recorded is among those counted and told apart from what was not met; where the record itself is what is demanded, what is missing is not met.";

/** The same of one criterion. */
export function unrecordedWords({ completenessFloor }: Criterion): string {
  return completenessFloor === null
    ? "The record itself is what is demanded: what is not written down is not met."
    : "What is not recorded is never “not met”: it is told apart, and is among the units that the share is of.";
}
