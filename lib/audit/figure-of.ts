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

/** A figure in the making: one object, grown in place, since a page makes thousands. */
type Making<Of> = { -readonly [Key in keyof Of]: Of[Key] };

function medianFigure(tally: MedianTally): MedianFigure {
  const { bounds, n } = tally;
  const ranks = bounds ? medianIntervalRanks(n, level) : undefined;
  const interval: FigureInterval | null =
    bounds && ranks
      ? { lower: bounds[0], upper: bounds[1], level, method: "median-order-statistics" }
      : null;
  const figure: Making<MedianFigure> = {
    measure: tally.measure,
    about: tally.subject,
    period: tally.period.name,
    population: tally.population,
    excluded: tally.excluded,
    excepted: tally.excepted,
    notRecorded: tally.notRecorded,
    kind: "median",
    unit: measureOf(tally.measure).unit,
    n,
    estimate: tally.median,
    quartiles: tally.quartiles,
    interval,
    clustered: clusteredMedian(tally, interval),
  };
  addGiven(figure, tally);
  if (n === 0) figure.why = nothingRecorded(tally);
  else if (!ranks) figure.why = `Too few for an interval: ${n} recorded.`;
  return figure;
}

function separationFigure(tally: RateTally): RateFigure {
  const interval = clopperPearson(tally.numerator, tally.denominator, level);
  return rateFigure(tally, measureOf(tally.measure).unit, interval);
}

function adherenceFigure(tally: RateTally, criterion: Criterion): RateFigure {
  const { numerator, denominator, notRecorded } = tally;
  const interval = wilson(numerator, denominator, level);
  const figure = rateFigure(tally, criterion.unit, interval);
  if (!tally.targetsDiffer) figure.target = criterion.target;
  if (tally.changedOn?.length) figure.changedOn = tally.changedOn;
  if (denominator === 0 || !interval) return figure;
  figure.bounds = [numerator / denominator, (numerator + notRecorded) / denominator];
  if (tally.targetsDiffer) return figure;
  const found = verdicts(tally, criterion, interval, figure.clustered);
  figure.inTheseRecords = found.inTheseRecords;
  figure.beyondChance = found.beyondChance;
  return figure;
}

function rateFigure(
  tally: RateTally,
  unit: string,
  interval: Interval | undefined,
): Making<RateFigure> {
  const { numerator, denominator } = tally;
  const figure: Making<RateFigure> = {
    measure: tally.measure,
    about: tally.subject,
    period: tally.period.name,
    population: tally.population,
    excluded: tally.excluded,
    excepted: tally.excepted,
    notRecorded: tally.notRecorded,
    kind: "rate",
    unit,
    numerator,
    denominator,
    notMet: tally.notMet,
    estimate: denominator === 0 ? null : numerator / denominator,
    interval: interval ?? null,
    clustered: clusteredRate(tally),
  };
  addGiven(figure, tally);
  if (denominator === 0) figure.why = nothingRecorded(tally);
  return figure;
}

/** What only some tallies have; nothing stands where nothing is. */
function addGiven(figure: Making<Figure>, { criterion, stratum }: Tally): void {
  if (criterion) figure.criterion = criterion;
  if (stratum) figure.stratum = stratum;
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
): Required<Pick<RateFigure, "inTheseRecords" | "beyondChance">> {
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
