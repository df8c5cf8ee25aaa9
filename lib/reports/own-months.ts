import type { OwnReach } from "@/lib/access/reach";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { controlChart } from "@/lib/views/control-chart";
import type { ControlChart } from "@/lib/views/control-rows";
import { lineOverTime } from "./time-line";

/** A clinician's own measure over two years. */
export type OwnMonth = { readonly measure: string; readonly chart: ControlChart };

const monthsShown = 24;

/** The clinician's measures over the two years that end with the period, each in the chart of its kind; without a value none. */
export async function ownMonths(
  reach: OwnReach,
  measures: readonly string[],
  of: Period,
): Promise<OwnMonth[]> {
  const months = monthsUpTo(of.until, monthsShown);
  const whose = { kind: "clinician", subject: reach.clinicianKey } as const;
  const found = measures.map(async (measure) => {
    const line = await lineOverTime(reach, measure, whose, months);
    if (!line || line.line.points.every(({ value }) => value === null)) return [];
    const chart = controlChart({
      measure,
      line: line.line,
      rebases: line.rebases.map((one) => ({ ...one, at: one.at.toISOString() })),
    });
    const blind = line.line.segments.some(({ showsWorsening, why }) => !showsWorsening && !why);
    return [{ measure, chart: blind ? withRunningSum(chart) : chart }];
  });
  return (await Promise.all(found)).flat();
}

/** The running sum is drawn against everyone's year before, and so on the clinical lead's page alone. */
function withRunningSum(chart: ControlChart): ControlChart {
  return {
    ...chart,
    notes: [...chart.notes, "It is on the clinical lead's page of this measure: ask to see yours."],
  };
}
