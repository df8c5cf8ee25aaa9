import { z } from "zod";
import type { OwnReach } from "@/lib/access/reach";
import { type Period, period, quarterOf } from "@/lib/records/period";
import { ownSpan } from "@/lib/store/figures/own-span";
import { type PeriodChoices, periodChoices } from "@/lib/views/period-choices";
import { type Address, AskedWrongly } from "./asked-period";
import { keptWithin } from "./kept-within";

const asked = z.object({ period: z.string().optional() });

/**
 * Reads ?period=… on a clinician's own page: without one the quarter of their last recorded day.
 *
 * @throws AskedWrongly where it names none
 */
export async function ownPeriod(
  reach: OwnReach,
  address: Address,
): Promise<{ period: Period; periods: PeriodChoices }> {
  const read = asked.safeParse({ period: address.period });
  if (!read.success) throw new AskedWrongly("The address asks for more than one period.");
  const span = await keptWithin(reach, "own span", () => ownSpan(reach));
  const chosen = read.data.period
    ? period(read.data.period)
    : quarterOf(span.last ?? new Date().toISOString().slice(0, 10));
  if (!chosen)
    throw new AskedWrongly(
      `"${read.data.period}" is no period; write 2026-Q3, 2026-07, 2026 or 2026-07-01..2026-07-31.`,
    );
  return { period: chosen, periods: periodChoices(chosen, span.first, span.last) };
}
