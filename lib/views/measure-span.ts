import { fewUnits } from "@/lib/audit/few-units";
import type { Period } from "@/lib/records/period";
import { periodWords } from "./period-words";
import { count } from "./quantity";

/** Which days a measure's page covers where that can be chosen, and the way to the other choice; null where it cannot. */
export function measureSpan(of: {
  readonly path: string;
  readonly period: Period;
  readonly shown: Period;
  readonly span: string | undefined;
  readonly practice: string | undefined;
}): { readonly words: string; readonly href: string; readonly hrefWords: string } | null {
  const query = new URLSearchParams({
    period: of.period.name,
    ...(of.practice ? { practice: of.practice } : {}),
  });
  if (of.shown.name !== of.period.name) {
    return {
      words: `Shown for the four quarters ${periodWords(of.shown)}: in the quarter itself at least one clinician or chair has fewer than ${count(fewUnits)} units, too few to read a rate from.`,
      href: `${of.path}?${query}&span=quarter`,
      hrefWords: "The quarter by itself",
    };
  }
  if (of.span !== "quarter") return null;
  return {
    words: `Shown for ${periodWords(of.period)} by itself. A rate of fewer than ${count(fewUnits)} units says little.`,
    href: `${of.path}?${query}`,
    hrefWords: "As the page opens",
  };
}
