import type { ControlChart } from "@/lib/statistics/control-chart";
import { chooseP, pChart, pPrimeChart, uChart, xmrChart } from "@/lib/statistics/control-chart";
import { quantile } from "@/lib/statistics/quantile";
import { runSignals } from "@/lib/statistics/run-chart";
import { FEWEST_UNITS } from "@/lib/statistics/xmr-chart";
import type { Figure } from "./figure";
import {
  type ChartName,
  type Drawn,
  inSegments,
  joined,
  type TimeLine,
  type WhyNoLimits,
} from "./over-time";

/** A month and its figure, where it has one. */
export type MonthOf = { readonly month: string; readonly figure: Figure | undefined };

type Limits = {
  readonly chart: ChartName;
  readonly drawn: ControlChart | undefined;
  readonly why: WhyNoLimits;
};

/**
 * A measure month by month: medians on an XmR chart, events per use on a u chart, other rates on a p chart, or p′ where
 * they vary beyond chance; runs around the median of the months. Months without enough units are gaps.
 * @param months oldest first, each month of the span
 * @param rebases months (YYYY-MM) from which limits begin anew
 */
export function monthlyLine(months: readonly MonthOf[], rebases: readonly string[]): TimeLine {
  const segments = inSegments(months, (one, before) =>
    rebases.some((month) => before.month < month && month <= one.month),
  );
  // A segment without figures is of the same kind as the others.
  const [some] = months.flatMap(({ figure }) => (figure ? [figure] : []));
  return joined(segments.map((segment) => drawn(segment, some)));
}

function drawn(months: readonly MonthOf[], some: Figure | undefined): Drawn {
  const { chart, drawn: found, why } = limitsOf(months, some);
  const values = months.map(({ figure }) => estimateOf(figure));
  const present = values.filter((value) => value !== null);
  const median = quantile(present, 0.5);
  return {
    points: months.map(({ month, figure }, place) => {
      const point = found?.points[place];
      return {
        id: month,
        value: values[place] ?? null,
        units: unitsOf(figure),
        centre: found?.centre ?? null,
        lower: point?.lower ?? null,
        upper: point?.upper ?? null,
        outside: point?.outside ?? null,
      };
    }),
    segment: {
      chart,
      why: found ? null : present.length === 0 ? "no-units" : why,
      runs: median === undefined || atAnEnd(months, median) ? null : runSignals(values, median),
      showsWorsening: true,
    },
  };
}

/** Half the months with nothing or everything met: no month can lie beyond, and a run there says nothing. */
function atAnEnd(months: readonly MonthOf[], median: number): boolean {
  const rate = months.some(({ figure }) => figure?.kind === "rate");
  return rate && (median === 0 || median === 1);
}

function limitsOf(months: readonly MonthOf[], some: Figure | undefined): Limits {
  if (!some || some.kind === "median") return ofMedians(months);
  const counts = months.map(({ figure }) =>
    figure?.kind === "rate" ? { events: figure.numerator, units: figure.denominator } : null,
  );
  if (some.measure === "separation-per-use") {
    const exposed = counts.map((one) => one && { events: one.events, exposure: one.units });
    return { chart: "u", drawn: uChart(exposed), why: "no-variation" };
  }
  const prime = chooseP(counts) === "p-prime" ? pPrimeChart(counts) : undefined;
  if (prime) return { chart: "p-prime", drawn: prime, why: "no-variation" };
  return { chart: "p", drawn: pChart(counts), why: "no-variation" };
}

function ofMedians(months: readonly MonthOf[]): Limits {
  const found = xmrChart(
    months.map(({ figure }) =>
      figure?.kind === "median" && figure.estimate !== null
        ? { value: figure.estimate, n: figure.n }
        : null,
    ),
  );
  if (found.drawn) return { chart: "xmr", drawn: found, why: "no-variation" };
  return { chart: "xmr", drawn: undefined, why: found.reason };
}

function estimateOf(figure: Figure | undefined): number | null {
  if (!figure || figure.estimate === null) return null;
  return figure.kind === "median" && figure.n < FEWEST_UNITS ? null : figure.estimate;
}

function unitsOf(figure: Figure | undefined): number {
  if (!figure) return 0;
  return figure.kind === "median" ? figure.n : figure.denominator;
}
