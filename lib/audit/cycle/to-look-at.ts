import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { Flagged, PageFlags } from "@/lib/audit/flagged";
import type { AuditComputed } from "./audit-content";
import { figureId } from "./figure-id";
import { thawedFlags } from "./frozen-flags";

/** What is looked at more closely: a clinician's rate that chance does not easily give, or a practice's criterion missed beyond chance. */
export type ToLookAt = {
  /** Names it within the audit, whatever else is flagged. */
  readonly id: string;
  readonly figure: RateFigure;
  /** Of a clinician's rate; null of a practice's. */
  readonly flagged: Flagged | null;
};

/** The figures that the flags of an audit were raised from, in that order. */
export function flaggedFrom(computed: Pick<AuditComputed, "across" | "adherence">): Figure[] {
  return [...computed.across, ...computed.adherence];
}

/** The flags of an audit with their figures. */
export function flagsOf(computed: AuditComputed): PageFlags {
  return thawedFlags(computed.flags, flaggedFrom(computed));
}

/** All that is looked at more closely: practices first, then clinicians in the order of measures and figures. */
export function toLookAt(computed: AuditComputed): ToLookAt[] {
  // What is recorded too little to be assessed is noted in the data check.
  const practices = computed.adherence.flatMap((figure): ToLookAt[] =>
    figure.kind === "rate" && figure.about.kind === "practice" && figure.beyondChance === "missed"
      ? [{ id: figureId(figure), figure, flagged: null }]
      : [],
  );
  const clinicians = flagsOf(computed)
    .flagged.filter(({ flag }) => flag.tier !== null)
    .map(
      (flagged): ToLookAt => ({
        id: figureId(flagged.figure),
        figure: flagged.figure,
        flagged,
      }),
    );
  return [...practices, ...clinicians];
}
