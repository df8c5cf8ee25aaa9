import { falseAlarmYears, oddsRatio, type SeparationCusum } from "@/lib/audit/separation-cusum";
import { axisOf } from "./axis";
import type { CusumChart } from "./control-rows";
import { day } from "./day";
import { visitAddress } from "./lead-address";
import { count, decimal, percent } from "./quantity";

/** A canal on the running sum. */
export type CanalAt = {
  readonly day: string;
  readonly practice: string;
  readonly sessionId: string;
  readonly canal: string;
  readonly event: boolean;
};

export type CusumChartOf = {
  readonly cusum: SeparationCusum;
  readonly canals: readonly CanalAt[];
  /** The clinician, in words. */
  readonly whose: string;
  /** The days of the baseline and of the sum, in words. */
  readonly baselineWords: string;
  readonly spanWords: string;
};

/** The running sum of a clinician's separations as it is drawn. */
export function cusumChart(of: CusumChartOf): CusumChart {
  const { cusum, canals } = of;
  const path = cusum.path.flatMap((sum, place) => {
    const point = { canals: place + 1, sum };
    // After a signal the sum begins again at 0.
    return cusum.signals.includes(place) ? [point, { canals: place + 1, sum: 0 }] : [point];
  });
  const points = canals.flatMap((canal, place) =>
    canal.event || cusum.signals.includes(place) ? [pointOf(of, canal, place)] : [],
  );
  return {
    title: titleOf(of),
    across: axisOf([0, canals.length], "", "canals, in the order of treatment", true),
    up: axisOf([0, cusum.limit * 1.1, ...cusum.path], "", "running sum", true),
    limit: { value: cusum.limit, words: `limit ${decimal(cusum.limit, 2)}` },
    path: [{ canals: 0, sum: 0 }, ...path],
    points,
    notes: notesOn(of),
    table: {
      head: ["Canal", "Day", "Running sum", "What"],
      rows: points.map((point) => ({
        id: point.id,
        cells: [
          count(point.canals),
          day(canals[point.canals - 1]?.day ?? ""),
          decimal(point.sum, 2),
          point.signal ? "separation, signal" : "separation",
        ],
      })),
    },
  };
}

function titleOf({ cusum, canals, whose, spanWords }: CusumChartOf): string {
  const events = canals.filter(({ event }) => event).length;
  const first = cusum.signals[0];
  const begun = `Separations of ${whose}, ${spanWords}: ${count(events)} in ${count(canals.length)} canals`;
  if (first === undefined) return `${begun}, no signal`;
  const signals =
    cusum.signals.length === 1 ? "a signal" : `${count(cusum.signals.length)} signals, the first`;
  return `${begun}, ${signals} after ${count(first + 1)} canals`;
}

function pointOf(
  { cusum }: CusumChartOf,
  canal: CanalAt,
  place: number,
): CusumChart["points"][number] {
  const sum = cusum.path[place] ?? 0;
  const signal = cusum.signals.includes(place);
  return {
    id: `${canal.practice}/${canal.sessionId}/${canal.canal}`,
    canals: place + 1,
    sum,
    signal,
    words: `Canal ${count(place + 1)}, ${day(canal.day)}: separation, running sum ${decimal(sum, 2)}${signal ? ", at the limit: a signal" : ""}.`,
    href: visitAddress(canal.practice, canal.sessionId),
  };
}

function notesOn({ cusum, baselineWords }: CusumChartOf): string[] {
  const { baseline, byCase, averageRun, standardError } = cusum;
  return [
    `The sum rises with each separation and falls with each canal without one; it looks for ${count(oddsRatio)} times the odds of the baseline (Bernoulli CUSUM, Steiner 2000).`,
    `Baseline: everyone's ${count(baseline.events)} separations in ${count(baseline.canals)} canals, ${percent(baseline.events / baseline.canals)}, ${baselineWords}, ${byCase ? "by tooth group, curvature and first treatment or retreatment" : "the same for every canal, as the cases did not differ beyond chance"}.`,
    `Limit ${decimal(cusum.limit, 2)}: with the baseline's visits drawn again and again, a false alarm comes once in ${count(Math.round(averageRun))} canals (± ${count(Math.round(standardError))}), ${falseAlarmYears} years of the same volume.`,
    "It is a rule of its own: what the page promises of flags does not count its signals.",
  ];
}
