import type { Period } from "@/lib/records/period";
import { type Protocol, type Span, spansOf, spansWithin } from "./protocol";

/** The days of the period on which a criterion came into force where it was not before; null is every practice. */
export function beganWithin(
  protocol: Protocol,
  id: string,
  practices: readonly string[] | null,
  period: Pick<Period, "from" | "until">,
): string[] {
  const all = spansOf(protocol, id);
  const days = spansWithin(protocol, id, practices, period).flatMap((span) =>
    span.from !== null && span.from > period.from && onlyBegan(span, all) ? [span.from] : [],
  );
  return [...new Set(days)].sort();
}

/**
 * Did a span begin without one of the same practice before it: then nothing was changed on its first day, the criterion
 * came into force.
 */
function onlyBegan({ from, practices }: Span, all: readonly Span[]): boolean {
  if (from === null || !("only" in practices)) return false;
  return !all.some(
    (one) => one.until === from && "only" in one.practices && one.practices.only === practices.only,
  );
}
