import { measureOf } from "@/lib/measures/measures";
import type { MedianTally, RateTally, Tally } from "@/lib/measures/tally";
import type { Criterion } from "@/lib/protocol/criterion";
import type { Interval } from "@/lib/statistics/interval";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";
import { clopperPearson, wilson } from "@/lib/statistics/proportion-interval";
import { clusteredMedian, clusteredRate, endsAtBest } from "./clustered";
import type { ClusteredInterval, Figure, FigureInterval, MedianFigure, RateFigure } from "./figure";
import { level } from "./level";

/** Counts become a figure: an estimate, its interval by the method the notes choose, and for a criterion its verdicts. */
export function figureOf(tally: Tally): Figure {
  if (tally.kind === "median") return medianFigure(tally);
  const { criterion } = tally;
  return criterion ? adherenceFigure(tally, criterion) : separationFigure(tally);
}

function shared(tally: Tally) {
  const { measure, criterion, population, excluded, excepted, notRecorded } = tally;
  return {
    measure,
    ...(criterion ? { criterion } : {}),
    about: tally.subject,
    period: tally.period.name,
    population,
    excluded,
    excepted,
    notRecorded,
    ...(tally.stratum ? { stratum: tally.stratum } : {}),
  };
}

function medianFigure(tally: MedianTally): MedianFigure {
  const { bounds, n } = tally;
  const ranks = bounds ? medianIntervalRanks(n, level) : undefined;
  const interval: FigureInterval | null =
    bounds && ranks
      ? { lower: bounds[0], upper: bounds[1], level, method: "median-order-statistics" }
      : null;
  return {
    ...shared(tally),
    kind: "median",
    unit: measureOf(tally.measure).unit,
    n,
    estimate: tally.median,
    quartiles: tally.quartiles,
    interval,
    clustered: clusteredMedian(tally, interval),
    ...(n === 0
      ? { why: nothingRecorded(tally) }
      : ranks
        ? {}
        : { why: `Too few for an interval: ${n} recorded.` }),
  };
}

function separationFigure(tally: RateTally): RateFigure {
  return {
    ...rateFigure(tally, clopperPearson(tally.numerator, tally.denominator, level)),
    unit: measureOf(tally.measure).unit,
  };
}

function adherenceFigure(tally: RateTally, criterion: Criterion): RateFigure {
  const { numerator, denominator, notRecorded } = tally;
  const interval = wilson(numerator, denominator, level);
  const figure = {
    ...rateFigure(tally, interval),
    unit: criterion.unit,
    ...(tally.targetsDiffer ? {} : { target: criterion.target }),
    ...(tally.changedOn?.length ? { changedOn: tally.changedOn } : {}),
  };
  if (denominator === 0 || !interval) return figure;
  const bounds = [numerator / denominator, (numerator + notRecorded) / denominator] as const;
  return {
    ...figure,
    bounds,
    ...(tally.targetsDiffer ? {} : verdicts(tally, criterion, interval, figure.clustered)),
  };
}

function rateFigure(tally: RateTally, interval: Interval | undefined): RateFigure {
  const { numerator, denominator, notMet } = tally;
  return {
    ...shared(tally),
    kind: "rate",
    unit: "",
    numerator,
    denominator,
    notMet,
    estimate: denominator === 0 ? null : numerator / denominator,
    interval: interval ?? null,
    clustered: clusteredRate(tally),
    ...(denominator === 0 ? { why: nothingRecorded(tally) } : {}),
  };
}

/**
 * Reached or missed in these records, and beyond chance: reached when the whole interval that allows for units of one
 * patient (else the plain one) is at or above the target, missed when it is under it even with every unrecorded unit met.
 * A target of all units is settled by counting.
 */
function verdicts(
  tally: RateTally,
  criterion: Criterion,
  interval: Interval,
  clustered: ClusteredInterval | null,
): Pick<RateFigure, "inTheseRecords" | "beyondChance"> {
  const { numerator, denominator, notRecorded, notMet } = tally;
  const floor = criterion.completenessFloor;
  if (floor !== null && denominator - notRecorded < floor * denominator) {
    return { inTheseRecords: "not assessable", beyondChance: "not assessable" };
  }
  if (criterion.target === 1) {
    const reached = notMet === 0 && notRecorded === 0;
    return {
      inTheseRecords: reached ? "reached" : "not reached",
      beyondChance: reached ? "reached" : notMet > 0 ? "missed" : "not settled by this many",
    };
  }
  const atBest = clustered
    ? endsAtBest(tally, clustered)
    : wilson(numerator + notRecorded, denominator, level);
  const beyondChance =
    (clustered ?? interval).lower >= criterion.target
      ? "reached"
      : atBest && atBest.upper < criterion.target
        ? "missed"
        : "not settled by this many";
  return {
    inTheseRecords: numerator / denominator >= criterion.target ? "reached" : "not reached",
    beyondChance,
  };
}

function nothingRecorded(tally: Tally): string {
  if (tally.population === 0) return "No units in this period.";
  return tally.notRecorded > 0
    ? "Nothing recorded for the units of this period."
    : "No unit of this period is eligible.";
}
