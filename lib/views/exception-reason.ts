import type { Criterion } from "@/lib/protocol/criterion";
import { reasonWords } from "./reason-words";

/** A practice's own words for a code. */
export type OwnReason = {
  readonly practice: string;
  readonly code: string;
  readonly words: string;
  readonly retired: boolean;
};

/** A coded reason as it is read: in the practice's own words where it has some. */
export function exceptionReasonWords(
  reason: string,
  practice: string,
  own: readonly OwnReason[],
): string {
  const found = own.find((one) => one.practice === practice && one.code === reason);
  return found?.words ?? reasonWords(reason);
}

/** The reasons that can be chosen: those of the criterion's list, then the practice's own that are in use. */
export function reasonsOffered(
  criterion: Criterion,
  practice: string,
  own: readonly OwnReason[],
): { readonly value: string; readonly words: string }[] {
  const inUse = own.filter((one) => one.practice === practice && !one.retired);
  const codes = [...(criterion.exceptions?.reasons ?? []), ...inUse.map(({ code }) => code)];
  return [...new Set(codes)].map((value) => ({
    value,
    words: exceptionReasonWords(value, practice, own),
  }));
}

/** What is to be said beside an exception, where it does not count or its reason is on no list; else empty. */
export function exceptionRemark(
  reason: string,
  practice: string,
  inForce: Criterion | undefined,
  own: readonly OwnReason[],
): string {
  if (!inForce) return "The criterion was not in force that day: it counts nowhere.";
  if (inForce.exceptions === null) return "The criterion foresees no exception: it counts nowhere.";
  const known =
    inForce.exceptions.reasons.includes(reason) ||
    own.some((one) => one.practice === practice && one.code === reason);
  return known ? "" : "On no list; it counts all the same.";
}
