import { holderReach } from "@/lib/access/reach";
import { falseAlarmYears, separationCusum } from "@/lib/audit/separation-cusum";
import type { Period } from "@/lib/records/period";
import { canalsInOrder } from "@/lib/store/comparing/separations-in-order";
import { visitPatterns } from "@/lib/store/comparing/visit-patterns";

const DAYS_OF_A_YEAR = 365.25;

/** A clinician's running sum followed canal by canal from the end of the baseline. */
export type Signals = {
  code: string;
  canals: number;
  limit: number;
  /** False alarms that chance is expected to give in these canals with this limit. */
  chance: number;
  byCase: boolean;
  baseline: { events: number; canals: number };
  /** Each signal: the how-manieth canal, the how-manieth separation, and its day. */
  signals: { canal: number; separations: number; day: string }[];
};

/**
 * The running sum of separations of each clinician over `span`, against everyone's visits of `baseline`. The limit is of
 * one false alarm in ten years of the person's own volume. Null where there is no sum.
 */
export async function separationSignals(
  people: readonly { key: string; code: string }[],
  baseline: Period,
  span: Period,
): Promise<(Signals | null)[]> {
  const reach = holderReach().figures;
  const visits = await visitPatterns(reach, baseline);
  const years = daysOf(span) / DAYS_OF_A_YEAR;
  const all: (Signals | null)[] = [];
  for (const { key, code } of people) {
    const canals = await canalsInOrder(reach, key, span);
    const cusum = separationCusum(canals, visits, canals.length / years);
    if (!cusum) {
      all.push(null);
      continue;
    }
    all.push({
      code,
      canals: canals.length,
      limit: cusum.limit,
      chance: canals.length / cusum.averageRun,
      byCase: cusum.byCase,
      baseline: cusum.baseline,
      signals: cusum.signals.map((place) => ({
        canal: place + 1,
        separations: canals.slice(0, place + 1).filter((canal) => canal.event).length,
        day: canals[place]?.day ?? "",
      })),
    });
  }
  return all;
}

/** A line of the table of signals. */
export function signalRow({ code, canals, limit, chance, signals }: Signals) {
  const [first, ...later] = signals;
  return {
    clinician: code,
    canals,
    limit: limit.toFixed(3),
    "expected by chance": chance.toFixed(3),
    signals: signals.length,
    "first after canals": first?.canal ?? "none",
    separations: first?.separations ?? "",
    on: first?.day ?? "",
    later: later.map(({ canal }) => canal).join(", "),
  };
}

export const falseAlarmWords = `limit of one false alarm in ${falseAlarmYears} years of the person's own volume`;

function daysOf({ from, until }: Period): number {
  return (Date.parse(until) - Date.parse(from)) / 86_400_000;
}
