import type { RateFigure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import { flagOf } from "./beyond-chance";
import { measureAddress } from "./lead-address";
import { count, percent } from "./quantity";
import type { Verdict } from "./verdict-words";

/** A criterion's figure of one subject, in a few words. */
export type MatrixCell = {
  readonly id: string;
  /** Null where there are no units. */
  readonly counted: {
    /** The rate; empty where nothing is counted. */
    readonly rate: string;
    /** "50 of 52" */
    readonly counts: string;
    /** The verdict in these records; of a clinician only that it cannot be assessed, as there is no verdict on a person. */
    readonly state: Verdict | null;
    /** "look" or "look first", as the flags have it. */
    readonly flag: string | null;
    /** The records that did not meet it, else those not recorded, else all. */
    readonly href: string;
  } | null;
};

export type MatrixCellOf = {
  readonly flags: PageFlags;
  readonly filters: Readonly<Record<string, string | undefined>>;
};

/** @param figure undefined where there is none */
export function matrixCell(
  id: string,
  figure: RateFigure | undefined,
  of: MatrixCellOf,
): MatrixCell {
  if (!figure || figure.population === 0) return { id, counted: null };
  const { about, estimate, numerator, denominator, notMet, notRecorded } = figure;
  const outcome = notMet > 0 ? "not-met" : notRecorded > 0 ? "not-recorded" : undefined;
  const practice = about.kind === "chair" ? about.practice : of.filters.practice;
  const chair = about.kind === "chair" ? about.code : undefined;
  const clinician = about.kind === "clinician" ? about.key : undefined;
  return {
    id,
    counted: {
      rate: estimate === null ? "" : percent(estimate),
      counts: estimate === null ? "" : `${count(numerator)} of ${count(denominator)}`,
      state: stateOf(figure),
      flag: flagOf(of.flags, figure) ?? null,
      href: measureAddress(
        figure.measure,
        { ...of.filters, practice, span: "quarter", clinician, chair, outcome },
        "#records",
      ),
    },
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
