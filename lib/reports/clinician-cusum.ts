import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { separationCusum } from "@/lib/audit/separation-cusum";
import { type Period, yearUntil } from "@/lib/records/period";
import { canalsInOrder } from "@/lib/store/comparing/separations-in-order";
import { visitPatterns } from "@/lib/store/comparing/visit-patterns";
import type { CusumChart } from "@/lib/views/control-rows";
import { cusumChart } from "@/lib/views/cusum-chart";
import { periodWords } from "@/lib/views/period-words";
import { keptWithin } from "./kept-within";

/** The chart, or in words why there is none. */
export type ClinicianCusum = { readonly cusum: CusumChart | null; readonly words: string | null };

/**
 * The running sum of a clinician's separations over the year that ends with the period, against everyone's year before
 * it. Its limit is simulated, so the answer is kept until the records change.
 */
export async function clinicianCusum(
  reach: FiguresReach | OwnReach,
  key: string,
  whose: string,
  period: Period,
): Promise<ClinicianCusum> {
  return keptWithin(reach, ["running sum", key, whose, period], () =>
    computed(reach, key, whose, period),
  );
}

async function computed(
  reach: FiguresReach | OwnReach,
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
      words: `No running sum: too little stands in ${periodWords(before)} to take as a baseline${"clinicianKey" in reach ? " (five others with ten canals each, and a separation among all)" : ", which takes a separation"}, or there is no canal since.`,
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
