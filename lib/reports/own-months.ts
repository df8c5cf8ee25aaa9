import type { OwnReach } from "@/lib/access/reach";
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
    return [{ measure, chart: { ...chart, notes: ownNotes(chart, blind) } }];
  });
  return (await Promise.all(found)).flat();
}

/**
 * The notes as they hold on one's own page: it has no flags that it could promise anything of, and no running sum, which
 * is drawn against everyone's year before.
 */
function ownNotes(chart: ControlChart, blind: boolean): string[] {
  return [
    ...chart.notes.map((note) => (note === outsidePromise ? chanceWords : note)),
    ...(blind ? ["It is on the clinical lead's page of this measure: ask to see yours."] : []),
  ];
}

const chanceWords =
  "Now and then chance alone gives a signal, the more charts the more often: look at what else changed then.";
