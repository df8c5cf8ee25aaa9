import type { FiguresReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { controlChart } from "@/lib/views/control-chart";
import type { ControlChart, CusumChart } from "@/lib/views/control-rows";
import { day, month } from "@/lib/views/day";
import { measureAddress } from "@/lib/views/lead-address";
import { type AskedWhose, askedWhose } from "./asked-whose";
import { clinicianCusum } from "./clinician-cusum";
import { lineOverTime } from "./time-line";

/** A measure over time for the one chosen, its rebases, and for a clinician's separations the running sum. */
export type OverTimeView = {
  readonly asked: AskedWhose;
  /** Null where the measure has no line over time. */
  readonly chart: ControlChart | null;
  readonly rebases: readonly { readonly id: number; readonly words: string }[];
  /** Months from which limits can begin anew. */
  readonly months: readonly { readonly value: string; readonly words: string }[];
  readonly cusum: CusumChart | null;
  /** What to say in place of a running sum, where one would be expected. */
  readonly cusumWords: string | null;
};

const monthsShown = 24;

export async function measureOverTime(
  reach: FiguresReach,
  measure: string,
  period: Period,
  asked: string | string[] | undefined,
  practice: string | undefined,
  of: readonly Figure[],
): Promise<OverTimeView> {
  const chosen = askedWhose(asked, practice, of);
  const months = monthsUpTo(period.until, monthsShown);
  const summed = measure === "separation-per-canal";
  const ofOne = chosen.whose.kind === "clinician";
  const [found, sum] = await Promise.all([
    lineOverTime(reach, measure, chosen.whose, months),
    summed && ofOne
      ? clinicianCusum(reach, chosen.whose.subject, chosen.words, period)
      : { cusum: null, words: summed ? chooseOne : null },
  ]);
  const rebases = found?.rebases ?? [];
  return {
    asked: chosen,
    chart: found
      ? controlChart({
          measure,
          line: found.line,
          rebases: rebases.map((one) => ({ ...one, at: one.at.toISOString() })),
          hrefOf: (name) => measureAddress(measure, { period: name, practice }),
        })
      : null,
    rebases: rebases.map((one) => ({
      id: one.id,
      words: `${month(one.month)}: ${one.reason} (${one.by}, ${day(one.at.toISOString())})`,
    })),
    // The first month has nothing before it to be told apart from.
    months: months.slice(1).map(({ name }) => ({ value: name, words: month(name) })),
    cusum: sum.cusum,
    cusumWords: sum.words,
  };
}

const chooseOne = "Choose a clinician to see the running sum of their separations.";
