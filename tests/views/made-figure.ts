import type { MedianFigure, RateFigure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import type { MedianTally, RateTally, Subject } from "@/lib/measures/tally";
import { period } from "@/lib/records/period";
import { measured } from "./measured";

const quarter = period("2026-Q3");
if (!quarter) throw new Error("2026-Q3 is a period");

/** A clinician of a practice. */
export function clinician(code: string, practice = "P1"): Subject {
  return { kind: "clinician", code, practice, key: `${practice}/${code}` };
}

/** A continuous measure's figure, made of counts as the store makes it. */
export function medianFigure(given: Partial<MedianTally>): MedianFigure {
  const figure = figureOf({
    kind: "median",
    measure: "volume",
    subject: { kind: "group" },
    period: quarter as NonNullable<typeof quarter>,
    population: 10,
    excluded: {},
    excepted: {},
    notRecorded: 0,
    n: 10,
    median: 18.6,
    quartiles: [15, 22],
    bounds: [17, 20],
    clustered: null,
    ...given,
  });
  if (figure.kind !== "median") throw new Error("not a median");
  return figure;
}

/** A rate's figure, made of counts as the store makes it. */
export function rateFigure(given: Partial<RateTally>): RateFigure {
  const figure = figureOf({
    kind: "rate",
    measure: "separation-per-use",
    subject: { kind: "group" },
    period: quarter as NonNullable<typeof quarter>,
    population: 100,
    excluded: {},
    excepted: {},
    notRecorded: 0,
    numerator: 1,
    denominator: 100,
    notMet: 99,
    clusters: null,
    ...(given.measure ? measured(given.measure) : {}),
    ...given,
  });
  if (figure.kind !== "rate") throw new Error("not a rate");
  return figure;
}
