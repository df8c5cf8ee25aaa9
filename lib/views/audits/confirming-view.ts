import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import { windowOpen } from "@/lib/audit/cycle/missing-to-sign";
import type { Dispute } from "@/lib/records/audit-work";
import { day } from "../day";
import { count } from "../quantity";
import { visitAddress } from "../visit-address";
import { clinicianNames } from "./clinician-names";

/** How the clinicians' confirming stands. */
export type ConfirmingView = {
  readonly window: string;
  readonly open: boolean;
  /** The last day, for the form; empty where no window was opened. */
  readonly until: string;
  readonly summary: string;
  readonly clinicians: readonly {
    readonly key: string;
    readonly name: string;
    readonly confirmed: string;
    readonly read: string;
    readonly disputes: string;
    readonly answer: string;
  }[];
  readonly disputes: readonly DisputeLine[];
};

export type DisputeLine = {
  readonly id: number;
  readonly clinician: string;
  readonly visit: string;
  readonly href: string;
  readonly words: string;
  readonly answer: string | null;
};

export type Response = {
  readonly clinicianKey: string;
  readonly readAt: string;
  readonly answer: string | null;
};

/** @param today YYYY-MM-DD */
export function confirmingView(
  { computed, work }: AuditContent,
  responses: readonly Response[],
  today: string,
): ConfirmingView {
  const names = clinicianNames(computed);
  const open = windowOpen(work, today);
  const confirmed = new Map(work.confirmations.map((one) => [one.clinicianKey, one]));
  return {
    window: windowWords({ work }, open),
    open,
    until: work.window?.until ?? "",
    summary: confirmingSummary({ computed, work }),
    clinicians: [...names].map(([key, name]) => {
      const own = confirmed.get(key);
      const response = responses.find(({ clinicianKey }) => clinicianKey === key);
      const disputes = work.disputes.filter(({ clinicianKey }) => clinicianKey === key).length;
      return {
        ...{ key, name },
        confirmed: own ? `yes, ${day(own.at)}` : "not yet",
        read: response ? `yes, ${day(response.readAt)}` : "not yet",
        disputes: disputes === 0 ? "none" : count(disputes),
        answer: response?.answer ?? "",
      };
    }),
    disputes: work.disputes.map((one) =>
      disputeLine(one, names.get(one.clinicianKey) ?? "a clinician"),
    ),
  };
}

/** One dispute as it stands beside the figures. */
export function disputeLine(one: Dispute, clinician: string): DisputeLine {
  return {
    ...{ id: one.id, clinician, href: visitAddress(one.practice, one.sessionId) },
    visit: `visit ${one.sessionId} of ${one.practice}`,
    words: `${one.kind === "not-mine" ? "Not mine" : "Wrong"}: ${one.note}`,
    answer:
      one.answer === null
        ? null
        : `${one.answer} (${one.answeredBy}, ${day(one.answeredAt ?? one.at)})`,
  };
}

/** How many confirmed, and how much is disputed, without naming anyone. */
export function confirmingSummary({
  computed,
  work,
}: Pick<AuditContent, "computed" | "work">): string {
  const keys = [...clinicianNames(computed).keys()];
  const confirmed = work.confirmations.filter(({ clinicianKey }) => keys.includes(clinicianKey));
  const { disputes } = work;
  const waiting = disputes.filter(({ answer }) => answer === null).length;
  const notOwn = disputes.filter(({ kind }) => kind === "not-mine").length;
  const said =
    disputes.length === 0
      ? "No visit is disputed."
      : `${count(disputes.length)} ${disputes.length === 1 ? "visit is" : "visits are"} disputed${notOwn > 0 ? `, ${count(notOwn)} as not the clinician's own` : ""}; ${waiting === 0 ? "every dispute is answered" : `${count(waiting)} without an answer yet`}. The figures count these records as they stand.`;
  return `${count(confirmed.length)} of ${count(keys.length)} clinicians confirmed their records. ${said}`;
}

/** How the window stands, in words. */
export function windowWords({ work }: Pick<AuditContent, "work">, open: boolean): string {
  const { window } = work;
  if (!window) return "The window has not been opened: no clinician has been asked yet.";
  if (open) return `Open until ${day(window.until)}.`;
  return window.closedAt
    ? `Closed by ${window.closedBy} on ${day(window.closedAt)}, planned until ${day(window.until)}.`
    : `Ended on ${day(window.until)}.`;
}
