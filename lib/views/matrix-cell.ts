import type { RateFigure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import { flagOf } from "./beyond-chance";
import { count, percent } from "./quantity";
import type { Verdict } from "./verdict-words";

/** A criterion's figure of one subject, in a few words; null where there are no units. */
export type MatrixCell = {
  /** The rate; empty where nothing is counted. */
  readonly rate: string;
  /** "50 of 52" */
  readonly counts: string;
  /** The verdict in these records; of a clinician only that it cannot be assessed, as there is no verdict on a person. */
  readonly state?: Verdict;
  /** "look" or "look first", as the flags have it. */
  readonly flag?: string;
  /** Which records it leads to: those that did not meet it, else those not recorded, else all. */
  readonly outcome?: "not-met" | "not-recorded";
} | null;

/** @param figure undefined where there is none */
export function matrixCell(figure: RateFigure | undefined, flags: PageFlags): MatrixCell {
  if (!figure || figure.population === 0) return null;
  const { estimate, numerator, denominator, notMet, notRecorded } = figure;
  const state = stateOf(figure);
  const flag = flagOf(flags, figure);
  return {
    rate: estimate === null ? "" : percent(estimate),
    counts: estimate === null ? "" : `${count(numerator)} of ${count(denominator)}`,
    ...(state ? { state } : {}),
    ...(flag ? { flag } : {}),
    ...(notMet > 0 ? { outcome: "not-met" } : notRecorded > 0 ? { outcome: "not-recorded" } : {}),
  };
}

function stateOf({ about, estimate, inTheseRecords }: RateFigure): Verdict | null {
  if (estimate === null) return { mark: "missing", words: "nothing to assess" };
  if (inTheseRecords === "not assessable") return { mark: "missing", words: "not assessable" };
  if (about.kind === "clinician") return null;
  if (inTheseRecords === "reached") return { mark: "met", words: "reached" };
  if (inTheseRecords === "not reached") return { mark: "missed", words: "not reached" };
  return { mark: "open", words: "no one target" };
}
