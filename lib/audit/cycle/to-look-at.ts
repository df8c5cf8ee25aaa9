import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { Flagged, PageFlags } from "@/lib/audit/flagged";
import type { Subject } from "@/lib/measures/tally";
import type { AuditComputed } from "./audit-content";
import { thawedFlags } from "./frozen-flags";

/** What is looked at more closely: a clinician's rate that chance does not easily give, or a practice's criterion. */
export type ToLookAt = {
  /** Names it within the audit, whatever else is flagged. */
  readonly id: string;
  readonly figure: RateFigure;
  /** Of a clinician's rate. */
  readonly flagged: Flagged | null;
  /** Of a practice's criterion: missed beyond chance, or not recorded enough to be assessed. */
  readonly trouble: "missed" | "not assessable" | null;
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
  const practices = computed.adherence.flatMap((figure): ToLookAt[] => {
    if (figure.kind !== "rate" || figure.about.kind !== "practice") return [];
    const trouble = troubleOf(figure);
    return trouble ? [{ id: idOf(figure), figure, flagged: null, trouble }] : [];
  });
  const clinicians = flagsOf(computed)
    .flagged.filter(({ flag }) => flag.tier !== null)
    .map(
      (flagged): ToLookAt => ({
        id: idOf(flagged.figure),
        figure: flagged.figure,
        flagged,
        trouble: null,
      }),
    );
  return [...practices, ...clinicians];
}

function troubleOf(figure: RateFigure): ToLookAt["trouble"] {
  if (figure.estimate === null || figure.target === undefined) return null;
  if (figure.inTheseRecords === "not assessable") return "not assessable";
  return figure.beyondChance === "missed" ? "missed" : null;
}

function idOf({ measure, about }: Figure): string {
  return `${measure} ${about.kind} ${nameOf(about)}`;
}

function nameOf(about: Subject): string {
  if (about.kind === "clinician") return about.key;
  return about.kind === "group" ? "" : about.code;
}
