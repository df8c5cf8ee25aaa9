import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { quarterOf, shifted } from "@/lib/records/period";
import { actionsWithin } from "@/lib/store/audits/actions";
import { auditsWithin } from "@/lib/store/audits/audits";
import { dataState } from "@/lib/store/quality/data-state";
import { practicesWithin } from "@/lib/store/records/practices";
import { type ActionLine, openActions } from "@/lib/views/audits/action-lines";
import { stateWords } from "@/lib/views/audits/audit-head";
import { auditName } from "@/lib/views/audits/audit-name";
import { periodChoices } from "@/lib/views/period-choices";
import { periodWords } from "@/lib/views/period-words";
import { nextOf } from "./begin";

/** The audits that a lead runs, and what can be begun. */
export type AuditsPage = {
  readonly audits: readonly AuditLine[];
  readonly actions: readonly ActionLine[];
  readonly begin: {
    readonly period: string;
    readonly periods: readonly { readonly value: string; readonly words: string }[];
    readonly practices: readonly { readonly value: string; readonly words: string }[];
  };
};

export type AuditLine = {
  readonly id: number;
  readonly name: string;
  readonly state: string;
  readonly aside: boolean;
  readonly signed: boolean;
  /** What a re-audit of it would be of; null where that is begun or signed, or where it was never signed itself. */
  readonly next: string | null;
};

/** @throws Refused */
export async function auditsPage(viewer: Viewer): Promise<AuditsPage> {
  const reach = leadReach(viewer);
  const [rows, actions, practices, state] = await Promise.all([
    auditsWithin(reach),
    actionsWithin(reach),
    practicesWithin(reach),
    dataState(reach),
  ]);
  const today = new Date().toISOString().slice(0, 10);
  const current = quarterOf(state.lastDay ?? today);
  // An audit is of a quarter that is over.
  const chosen = current.until > today ? shifted(current, -1) : current;
  return {
    audits: rows.map((row) => {
      const next = nextOf(row);
      const repeated = rows.some(
        (one) =>
          !one.setAsideBy &&
          one.practice === row.practice &&
          one.period === next.name &&
          (one.previous !== null || one.versions > 0),
      );
      return {
        id: row.id,
        name: auditName(row),
        state: stateWords(row),
        aside: row.setAsideBy !== null,
        signed: row.versions > 0,
        next: row.versions > 0 && !repeated ? periodWords(next) : null,
      };
    }),
    actions: openActions(actions, today),
    begin: {
      period: chosen.name,
      periods: periodChoices(chosen, state.firstDay, state.lastDay).all.map(({ name, words }) => ({
        value: name,
        words,
      })),
      practices: [
        ...(reach.practices === null && practices.length > 1
          ? [{ value: "", words: "The whole group" }]
          : []),
        ...practices.map(({ code, name }) => ({ value: code, words: name })),
      ],
    },
  };
}
