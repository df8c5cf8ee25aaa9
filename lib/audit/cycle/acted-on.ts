import { type Difference, differenceOf } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import type { AuditAction } from "@/lib/records/audit-work";
import type { AuditComputed } from "./audit-content";

/** An earlier action's measure before and after, with the difference (after − before) and its interval. */
export type ActedOn = {
  readonly action: AuditAction;
  readonly measure: string;
  readonly before: Figure;
  readonly now: Figure;
  readonly difference: Difference | undefined;
};

/** For each earlier action about a measure, its figures of the whole and of each practice that has both. */
export function actedOn(computed: AuditComputed, earlier: readonly AuditAction[]): ActedOn[] {
  const now = [...computed.adherence, ...computed.measures];
  return earlier.flatMap((action) =>
    (computed.earlier?.figures ?? []).flatMap((before): ActedOn[] => {
      if (before.measure !== action.measure) return [];
      // Of one practice the whole is the practice.
      if (before.about.kind === "group" && computed.practices.length === 1) return [];
      const after = now.find(
        (figure) => figure.measure === before.measure && sameWhole(figure, before),
      );
      if (!after) return [];
      const difference = differenceOf(after, before);
      return [{ action, measure: before.measure, before, now: after, difference }];
    }),
  );
}

function sameWhole({ about: one }: Figure, { about: other }: Figure): boolean {
  if (one.kind === "practice" && other.kind === "practice") return one.code === other.code;
  return one.kind === "group" && other.kind === "group";
}
