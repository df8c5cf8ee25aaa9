import type { RateFigure } from "@/lib/audit/figure";
import type { AuditComputed } from "./audit-content";

/** The criteria's rates of all that an audit covers: of the group or, where it is of one practice, of that. */
export function wholeRates({
  adherence,
  practices,
}: Pick<AuditComputed, "adherence" | "practices">): RateFigure[] {
  const kind = practices.length > 1 ? "group" : "practice";
  return adherence.filter(
    (figure): figure is RateFigure => figure.kind === "rate" && figure.about.kind === kind,
  );
}
