import type { ComparedFigure } from "@/lib/audit/cycle/audit-content";
import { windowOpen } from "@/lib/audit/cycle/missing-to-sign";
import { tooFewToTell } from "@/lib/audit/too-few-to-tell";
import type { AuditForm, Confirmation, ConfirmWindow, Dispute } from "@/lib/records/audit-work";
import { clusteredWords } from "../clustered-words";
import { day, moment } from "../day";
import { intervalWords } from "../figure-line";
import { definitionOf, titleOf } from "../measure-words";
import { ownComparison } from "../own-comparison";
import { ownFinding } from "../own-finding";
import { periodNameWords } from "../period-words";
import { visitAddress } from "../visit-address";
import { auditName } from "./audit-name";
import { type DisputeLine, disputeLine } from "./confirming-view";
import { withinControl } from "./within-control";

type Shared = Pick<AuditForm, "id" | "practice" | "period"> & {
  readonly window: ConfirmWindow | null;
  readonly open: boolean;
  readonly signed: {
    readonly version: number;
    readonly by: string;
    readonly at: string;
    readonly sha256: string;
  } | null;
};

type Part = {
  readonly confirmation: Confirmation | null;
  readonly disputes: readonly Dispute[];
  readonly answer: { readonly text: string; readonly at: string } | null;
};

type OwnVisit = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
};

/** An audit in a clinician's list. */
export type SharedLine = {
  readonly id: number;
  readonly name: string;
  readonly state: string;
  /** The clinician is asked for something. */
  readonly asked: boolean;
};

/** A clinician's own page of an audit. */
export type SharedView = {
  readonly id: number;
  readonly name: string;
  readonly period: string;
  readonly quarter: string;
  readonly state: string;
  readonly windowOpen: boolean;
  readonly confirmed: string;
  readonly disputes: readonly DisputeLine[];
  /** One's own visits, to choose from. */
  readonly visits: readonly {
    readonly value: string;
    readonly words: string;
    readonly href: string;
  }[];
  readonly figures: readonly SharedFigure[];
  readonly tooFew: readonly string[];
  /** Specific things within the clinician's control. */
  readonly control: readonly string[];
  readonly answer: { readonly text: string; readonly kept: string };
  readonly reflection: { readonly text: string; readonly kept: string };
};

export type SharedFigure = {
  readonly measure: string;
  readonly title: string;
  readonly finding: string;
  readonly comparison: string;
  readonly interval: string;
  readonly note: string;
  readonly definition: string;
};

/** @param today YYYY-MM-DD */
export function sharedLine(audit: Shared, part: Part, today: string): SharedLine {
  return {
    id: audit.id,
    name: auditName(audit),
    state: stateOf(audit, part, today),
    asked: isOpen(audit, today) && part.confirmation === null,
  };
}

export function sharedView(of: {
  readonly audit: Shared;
  readonly part: Part;
  readonly own: readonly ComparedFigure[];
  readonly visits: readonly OwnVisit[];
  readonly reflection: { readonly text: string; readonly at: string } | null;
  readonly today: string;
}): SharedView {
  const { audit, part, own, visits, reflection, today } = of;
  const told = own.filter(({ figure }) => !tooFewToTell(figure));
  return {
    id: audit.id,
    name: auditName(audit),
    period: periodNameWords(audit.period),
    quarter: audit.period,
    state: stateOf(audit, part, today),
    windowOpen: isOpen(audit, today),
    confirmed: part.confirmation ? `You confirmed on ${day(part.confirmation.at)}.` : "",
    disputes: part.disputes.map((one) => disputeLine(one, "you")),
    visits: visits.map((one) => ({
      value: `${one.practice}/${one.sessionId}`,
      words: `${day(one.day)}, visit ${one.sessionId}, tooth ${one.tooth}`,
      href: visitAddress(one.practice, one.sessionId),
    })),
    figures: told.map(({ figure, comparison, note }) => ({
      measure: figure.measure,
      title: titleOf(figure),
      finding: ownFinding(figure),
      comparison: figure.estimate === null ? "" : ownComparison(figure, comparison),
      interval: [intervalWords(figure, figure.interval), clusteredWords(figure)]
        .filter(Boolean)
        .join(" "),
      note: note ?? "",
      definition: definitionOf(figure),
    })),
    tooFew: own
      .filter(({ figure }) => tooFewToTell(figure))
      .map(({ figure }) => `${titleOf(figure)}: ${ownFinding(figure)}`),
    control: withinControl(own),
    answer: { text: part.answer?.text ?? "", kept: keptWords(part.answer) },
    reflection: { text: reflection?.text ?? "", kept: keptWords(reflection) },
  };
}

function isOpen({ open, window }: Shared, today: string): boolean {
  return open && windowOpen({ window }, today);
}

function stateOf(audit: Shared, { confirmation }: Part, today: string): string {
  if (isOpen(audit, today)) {
    const until = day(audit.window?.until ?? today);
    return confirmation
      ? `Open until ${until}; you have confirmed your records.`
      : `You are asked to confirm your records until ${until}.`;
  }
  if (audit.signed && !audit.open)
    return `Signed as version ${audit.signed.version} by ${audit.signed.by} on ${moment(new Date(audit.signed.at), "UTC")} UTC. Figures are those that were signed.`;
  return "The window for confirming is over; the audit is not signed yet.";
}

function keptWords(kept: { readonly at: string } | null): string {
  return kept ? `Kept on ${moment(new Date(kept.at), "UTC")} UTC.` : "";
}
