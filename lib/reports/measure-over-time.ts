import type { FiguresReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import { dayAfter, monthsUpTo, type Period, quarterOf, shifted } from "@/lib/records/period";
import type { Whose } from "@/lib/store/comparing/separations-in-order";
import { changeWords } from "@/lib/views/change-words";
import { controlChart } from "@/lib/views/control-chart";
import type { ControlChart, CusumChart } from "@/lib/views/control-rows";
import { day, month } from "@/lib/views/day";
import { type FigureRow, figureRow } from "@/lib/views/figure-row";
import { measureAddress } from "@/lib/views/lead-address";
import { periodWords } from "@/lib/views/period-words";
import { type AskedWhose, askedWhose, onlyPractice } from "./asked-whose";
import { changesOf } from "./changes";
import { clinicianCusum } from "./clinician-cusum";
import { figures } from "./figures";
import { isOf, lineOverTime } from "./time-line";

/** A measure over time for the one chosen, its rebases, and for a clinician's separations the running sum. */
export type OverTimeView = {
  readonly asked: AskedWhose;
  /** Null where the measure has no line over time. */
  readonly chart: ControlChart | null;
  readonly rebases: readonly { readonly id: number; readonly words: string }[];
  /** Months from which limits can begin anew. */
  readonly months: readonly { readonly value: string; readonly words: string }[];
  readonly cusum: CusumChart | null;
  /** The last quarter against the one before and that of the year before, in sentences. */
  readonly changes: readonly string[];
  readonly quarters: readonly FigureRow[];
  /** What to say in place of a running sum, where one would be expected. */
  readonly cusumWords: string | null;
};

const monthsShown = 24;
const quartersShown = 8;

export async function measureOverTime(
  reach: FiguresReach,
  measured: Measured,
  period: Period,
  asked: string | string[] | undefined,
  practice: string | undefined,
  of: readonly Figure[],
): Promise<OverTimeView> {
  const { measure } = measured;
  const chosen = askedWhose(asked, onlyPractice(reach), of);
  const months = monthsUpTo(period.until, monthsShown);
  const summed = measure === "separation-per-canal";
  const ofOne = chosen.whose.kind === "clinician";
  const quarters = quartersUpTo(period, quartersShown);
  const [found, ofQuarters, sum] = await Promise.all([
    lineOverTime(reach, measure, chosen.whose, months),
    quarterFigures(reach, measure, chosen.whose, quarters),
    summed && ofOne
      ? clinicianCusum(reach, chosen.whose.subject, chosen.words, period)
      : { cusum: null, words: summed ? chooseOne : null },
  ]);
  const rebases = found?.rebases ?? [];
  return {
    asked: chosen,
    chart: found
      ? controlChart({
          measure: measured,
          whose: chosen.words,
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
    changes: changesOf(ofQuarters, quarters.at(-1) ?? period).map(changeWords),
    quarters: quarters.flatMap((one) =>
      ofQuarters
        .filter((figure) => figure.period === one.name)
        .map((figure) => ({ ...figureRow(figure, periodWords(one)), whole: false })),
    ),
    cusum: sum.cusum,
    cusumWords: sum.words,
  };
}

async function quarterFigures(
  reach: FiguresReach,
  measure: string,
  whose: Whose,
  quarters: readonly Period[],
): Promise<Figure[]> {
  const found = await figures(reach, { measures: [measure], periods: quarters, by: [whose.kind] });
  return found.filter((figure) => isOf(figure, whose));
}

/** Whole quarters, oldest first, up to the one in which the period ends. */
function quartersUpTo(period: Period, number: number): Period[] {
  const last = quarterOf(dayAfter(period.until, -1));
  return Array.from({ length: number }, (_, place) => shifted(last, place - number + 1));
}

const chooseOne = "Choose a clinician to see the running sum of their separations.";
