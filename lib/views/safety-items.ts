import { day, moment } from "./day";
import { count, decimal } from "./quantity";
import { reasonWords } from "./reason-words";
import { irrigantWords } from "./record-words";
import { openActions, type SafetyState } from "./safety-open";
import { visitAddress } from "./visit-address";

/** A safety item with its visit, as the store lists it. */
export type SafetyItemInput = Omit<SafetyState, "pending"> & {
  readonly kind: string;
  readonly practice: string;
  readonly chair: string;
  readonly sessionId: string;
  readonly zone: string;
  readonly tooth: string;
  readonly day: string;
  readonly clinician: string;
  readonly canal: string;
  readonly seq: number | null;
  readonly events: number;
  readonly management: string | null;
  readonly third: string | null;
  readonly fragmentMm: number | null;
  readonly met: {
    readonly first: "naocl" | "chx";
    readonly canalBefore: string;
    readonly seqBefore: number;
    readonly startedBefore: string | null;
    readonly startedAt: string | null;
  } | null;
};

export type SafetyItemLine = {
  readonly id: string;
  readonly day: string;
  readonly href: string;
  readonly visit: string;
  readonly where: string;
  readonly clinician: string;
  readonly what: string;
  readonly detail: string;
  /** What is still to be done or to be written down; none of a contact. */
  readonly open: readonly string[];
};

/** A safety item in words. */
export function safetyItemLine(item: SafetyItemInput): SafetyItemLine {
  return {
    id: [item.practice, item.sessionId, item.what, item.kind, item.canal, item.seq].join("/"),
    day: day(item.day),
    href: visitAddress(item.practice, item.sessionId),
    visit: `visit ${item.sessionId}, tooth ${item.tooth}`,
    where: `${item.practice}, chair ${item.chair}`,
    clinician: item.clinician,
    what: whatWords(item),
    detail: detailWords(item),
    open: openActions({ ...item, pending: item.management === "pending" }),
  };
}

function whatWords({ what, kind, events }: SafetyItemInput): string {
  if (what === "contact") return "hypochlorite next to chlorhexidine";
  if (what === "incident") return reasonWords(kind);
  return events === 1 ? "separation" : `${count(events)} separations`;
}

function detailWords(item: SafetyItemInput): string {
  if (item.what === "contact") return contactWords(item);
  if (item.what === "incident") return "";
  return [
    item.canal ? `canal ${item.canal}` : "",
    item.third === null ? "third not recorded" : `${reasonWords(item.third)} third`,
    item.fragmentMm === null
      ? "fragment not measured"
      : `fragment ${decimal(item.fragmentMm, 1)} mm`,
    item.management === null ? "what became of it not recorded" : reasonWords(item.management),
  ]
    .filter(Boolean)
    .join(", ");
}

/** What met what, and by which order: that of time over the whole visit, or that of seq in a canal. */
function contactWords({ kind, canal, seq, zone, met }: SafetyItemInput): string {
  if (!met) return "";
  const second = met.first === "naocl" ? "chx" : "naocl";
  if (kind === "time") {
    const at = (started: string | null, where: string) =>
      `${started ? `at ${moment(new Date(started), zone).slice(-5)}` : ""} ${where ? `in ${where}` : "for the whole tooth"}`.trim();
    return `by time: ${irrigantWords(met.first)} ${at(met.startedBefore, met.canalBefore)}, then ${irrigantWords(second)} ${at(met.startedAt, canal)}`;
  }
  const where = canal
    ? `by seq in canal ${canal}`
    : "by seq of what was written for the whole tooth";
  return `${where}: ${irrigantWords(met.first)} (${met.seqBefore}), then ${irrigantWords(second)} (${seq})`;
}
