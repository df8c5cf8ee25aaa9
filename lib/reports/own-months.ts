import type { OwnReach } from "@/lib/access/reach";
import type { Measured } from "@/lib/measures/measured";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { controlChart, outsidePromise } from "@/lib/views/control-chart";
import type { ControlChart } from "@/lib/views/control-rows";
import { lineOverTime } from "./time-line";

/** A clinician's own measure over two years. */
export type OwnMonth = { readonly measure: string; readonly chart: ControlChart };

const monthsShown = 24;

/** The clinician's measures over the two years that end with the period, each in the chart of its kind; without a value none. */
export async function ownMonths(
  reach: OwnReach,
  measures: readonly Measured[],
  of: Period,
): Promise<OwnMonth[]> {
  const months = monthsUpTo(of.until, monthsShown);
  const whose = { kind: "clinician", subject: reach.clinicianKey } as const;
  const found = measures.map(async ({ measure, ...judged }) => {
    const line = await lineOverTime(reach, measure, whose, months);
    if (!line || line.line.points.every(({ value }) => value === null)) return [];
    const chart = controlChart({
      measure: { measure, ...judged },
      line: line.line,
      rebases: line.rebases.map((one) => ({ ...one, at: one.at.toISOString() })),
    });
    return [{ measure, chart: { ...chart, notes: chart.notes.map(ownNote) } }];
  });
  return (await Promise.all(found)).flat();
}

/** A note as it holds on one's own page, which has no flags that it could promise anything of. */
function ownNote(note: string): string {
  return note === outsidePromise ? chanceWords : note;
}

const chanceWords =
  "Now and then chance alone gives a signal, the more charts the more often: look at what else changed then.";
