import type * as r4 from "fhir/r4";
import type { Figure } from "@/lib/audit/figure";
import type { ByReason } from "@/lib/measures/tally";
import { reasonWords } from "../reason-words";
import { absent } from "./absent";
import { coded, type PopulationCode } from "./coded";
import { extensionUrls } from "./extension-urls";

type Population = r4.MeasureReportGroupPopulation;

/**
 * A figure's units by FHIR's arithmetic, in which a denominator holds what is excluded and excepted: the score is the
 * numerator over the denominator less both, that of a median over the measure population less its exclusions.
 */
export function populationsOf(figure: Figure): Population[] {
  const { masked, population: units, excluded, excepted } = figure;
  const leftOut = sum(excluded);
  const of = (code: PopulationCode, count: number, by: ByReason = {}) =>
    population(code, masked ? null : count, by);
  if (figure.kind === "median")
    return [
      of("initial-population", units),
      of("measure-population", figure.n + leftOut),
      of("measure-population-exclusion", leftOut, excluded),
      of("measure-observation", figure.n),
    ];
  return [
    of("initial-population", units),
    of("denominator", figure.denominator + leftOut + sum(excepted)),
    of("denominator-exclusion", leftOut, excluded),
    of("denominator-exception", sum(excepted), excepted),
    of("numerator", figure.numerator),
  ];
}

/** Units of which the records do not tell: of a criterion they are counted, of a measure they are not. */
export function notRecordedOf({ criterion, notRecorded, masked }: Figure): r4.Extension {
  const url = criterion ? extensionUrls.countedNotRecorded : extensionUrls.uncountedNotRecorded;
  if (masked) return { url, _valueInteger: { extension: [absent("masked")] } };
  return { url, valueInteger: notRecorded };
}

/** One population of a report; a count that is masked is said to be, and is never 0. */
export function population(
  code: PopulationCode,
  count: number | null,
  by: ByReason = {},
): Population {
  const reasons = Object.entries(by).filter(([, units]) => units > 0);
  return {
    ...(count !== null && reasons.length > 0 ? { extension: reasons.map(byReason) } : {}),
    code: coded("measure-population", code),
    ...(count === null ? { _count: { extension: [absent("masked")] } } : { count }),
  };
}

function byReason([reason, units]: [string, number]): r4.Extension {
  return {
    url: extensionUrls.byReason,
    extension: [
      { url: "reason", valueString: reasonWords(reason) },
      { url: "count", valueInteger: units },
    ],
  };
}

function sum(by: ByReason): number {
  return Object.values(by).reduce((total, units) => total + units, 0);
}
