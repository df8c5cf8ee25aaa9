import type { FiguresReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import { measureOf } from "@/lib/measures/measures";
import type { Period } from "@/lib/records/period";
import { practicesWithin } from "@/lib/store/records/practices";
import { figures } from "./figures";

/** What is told of a practice beside its adherence. */
const further = [
  "irrigation-time",
  "volume",
  "hypochlorite-time",
  "hypochlorite-volume",
  "separation-per-canal",
];

/**
 * Irrigation and separation by practice, in the order of measure and practice. A practice without units has a figure
 * that says so.
 */
export async function furtherMeasures(reach: FiguresReach, period: Period): Promise<Figure[]> {
  const [found, practices] = await Promise.all([
    figures(reach, { measures: further, periods: [period], by: ["practice"] }),
    practicesWithin(reach),
  ]);
  return further.flatMap((measure) =>
    practices.map(
      ({ code }) =>
        found.find(
          ({ about, ...one }) =>
            one.measure === measure && about.kind === "practice" && about.code === code,
        ) ?? without(measure, code, period),
    ),
  );
}

/** The figure of a practice that has no units in the period. */
function without(measure: string, code: string, period: Period): Figure {
  const nothing = {
    measure,
    subject: { kind: "practice", code } as const,
    period,
    population: 0,
    excluded: {},
    excepted: {},
    notRecorded: 0,
  };
  return measureOf(measure).kind === "median"
    ? figureOf({
        ...{ ...nothing, kind: "median", n: 0 },
        ...{ median: null, quartiles: null, bounds: null, clustered: null },
      })
    : figureOf({
        ...{ ...nothing, kind: "rate", numerator: 0, denominator: 0 },
        ...{ notMet: 0, clusters: null },
      });
}
