import type { FiguresReach } from "@/lib/access/reach";
import { lineKey } from "@/lib/audit/disclosure/line-key";
import { maskedWhy } from "@/lib/audit/disclosure/masked-figure";
import type { Figure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import { measureOf } from "@/lib/measures/measures";
import type { Period } from "@/lib/records/period";
import { practicesWithin } from "@/lib/store/records/practices";
import { masksAround } from "./disclosure-masks";
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
 * that says so; where a practice and period are masked, so is all of this.
 */
export async function furtherMeasures(reach: FiguresReach, period: Period): Promise<Figure[]> {
  const [found, practices, { places }] = await Promise.all([
    figures(reach, { measures: further, periods: [period], by: ["practice"] }),
    practicesWithin(reach),
    masksAround(reach, period),
  ]);
  const masked = (code: string) => places.has(lineKey({ kind: "practice", code }, period.name));
  return further.flatMap((measure) =>
    practices.map(({ code }) => {
      const figure = found.find(
        ({ about, ...one }) =>
          one.measure === measure && about.kind === "practice" && about.code === code,
      );
      if (masked(code)) return { ...without(measure, code, period), masked: true, why: maskedWhy };
      return figure ?? without(measure, code, period);
    }),
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
