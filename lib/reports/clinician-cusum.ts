import type { FiguresReach } from "@/lib/access/reach";
import { separationCusum } from "@/lib/audit/separation-cusum";
import { dayAfter, type Period } from "@/lib/records/period";
import { canalsInOrder, visitPatterns } from "@/lib/store/comparing/separations-in-order";
import { revision } from "@/lib/store/facts/revision";
import type { CusumChart } from "@/lib/views/control-rows";
import { cusumChart } from "@/lib/views/cusum-chart";
import { periodWords } from "@/lib/views/period-words";
import { kept } from "./kept";

/** The chart, or in words why there is none. */
export type ClinicianCusum = { readonly cusum: CusumChart | null; readonly words: string | null };

/**
 * The running sum of a clinician's separations over the year that ends with the period, against everyone's year before
 * it. Its limit is simulated, so the answer is kept until the records change.
 */
export async function clinicianCusum(
  reach: FiguresReach,
  key: string,
  whose: string,
  period: Period,
): Promise<ClinicianCusum> {
  return kept(
    `running sum ${JSON.stringify([reach.practices, key, whose, period])}`,
    () => revision(reach),
    () => computed(reach, key, whose, period),
  );
}

async function computed(
  reach: FiguresReach,
  key: string,
  whose: string,
  period: Period,
): Promise<ClinicianCusum> {
  const span = yearUntil(period.until);
  const before = yearUntil(span.from);
  const [canals, visits] = await Promise.all([
    canalsInOrder(reach, key, span),
    visitPatterns(reach, before),
  ]);
  const cusum = separationCusum(canals, visits, canals.length);
  if (!cusum)
    return {
      cusum: null,
      words: `No running sum: there is no separation in ${periodWords(before)} to take as a baseline, or no canal of this clinician since.`,
    };
  return {
    words: null,
    cusum: cusumChart({
      cusum,
      canals,
      whose,
      baselineWords: periodWords(before),
      spanWords: periodWords(span),
    }),
  };
}

/** The year that ends with the day before. */
export function yearUntil(until: string): Period {
  const from = `${Number(until.slice(0, 4)) - 1}${until.slice(4)}`.replace("-02-29", "-02-28");
  return { name: `${from}..${dayAfter(until, -1)}`, from, until };
}
