import { z } from "zod";
import { type FiguresReach, narrowed, type RecordsReach } from "@/lib/access/reach";
import { type Period, period, quarterOf } from "@/lib/records/period";
import { type DataState, dataState } from "@/lib/store/quality/data-state";
import { practicesWithin } from "@/lib/store/records/practices";
import { type PeriodChoices, periodChoices } from "@/lib/views/period-choices";

/** Search parameters as Next hands them over. */
export type Address = Readonly<Record<string, string | string[] | undefined>>;

/** The address asks for what there is none of; the sentence is for the person. */
export class AskedWrongly extends Error {
  override readonly name = "AskedWrongly";
}

export type Asked = {
  readonly period: Period;
  readonly periods: PeriodChoices;
  /** All that can be chosen from. */
  readonly practices: readonly { code: string; name: string; zone: string }[];
  /** The chosen one. */
  readonly practice: string | undefined;
  readonly state: DataState;
};

const asked = z.object({ period: z.string().optional(), practice: z.string().optional() });

/**
 * Reads ?period=…&practice=… within a reach: without a period the quarter of the last recorded day.
 *
 * @throws AskedWrongly where the period names none or no practice of that code is within the reach
 */
export async function askedPeriod(
  reach: FiguresReach | RecordsReach,
  address: Address,
): Promise<Asked> {
  const read = asked.safeParse({ period: one(address.period), practice: one(address.practice) });
  if (!read.success)
    throw new AskedWrongly("The address asks for more than one period or practice.");
  const [practices, state] = await Promise.all([practicesWithin(reach), dataState(reach)]);
  const practice = read.data.practice || undefined;
  if (practice && !practices.some(({ code }) => code === practice)) {
    throw new AskedWrongly(`There is no practice ${practice} among those you may see.`);
  }
  const chosen = read.data.period
    ? period(read.data.period)
    : quarterOf(state.lastDay ?? new Date().toISOString().slice(0, 10));
  if (!chosen)
    throw new AskedWrongly(
      `"${read.data.period}" is no period; write 2026-Q3, 2026-07, 2026 or 2026-07-01..2026-07-31.`,
    );
  return {
    period: chosen,
    periods: periodChoices(chosen, state.firstDay, state.lastDay),
    practices,
    practice,
    state,
  };
}

/** The same for figures, with the reach narrowed to the chosen practice. */
export async function askedFigures(
  reach: FiguresReach,
  address: Address,
): Promise<Asked & { reach: FiguresReach }> {
  const found = await askedPeriod(reach, address);
  return { ...found, reach: narrowed(reach, found.practice) };
}

function one(value: string | string[] | undefined): string | undefined {
  return Array.isArray(value) ? value[0] : value;
}
