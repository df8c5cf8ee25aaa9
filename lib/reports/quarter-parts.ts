import type { FiguresReach } from "@/lib/access/reach";
import { type Completeness, completenessOf } from "@/lib/audit/completeness";
import type { Figure } from "@/lib/audit/figure";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { beganWithin } from "@/lib/protocol/began-within";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { tallies } from "@/lib/store/figures/tallies";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { figures, measuresShown } from "./figures";
import { onFourQuarters } from "./four-quarters";
import { keptWithin } from "./kept-within";

/** What is charted across clinicians beside the criteria; the others have their own pages. */
export const medians = ["irrigation-time", "volume"];
export const rates = ["separation-per-use"];

/** By the id of a criterion, the days of the period on which it came into force where it was not before. */
export async function beganIn(
  reach: FiguresReach,
  period: Period,
  criteria: readonly Criterion[],
): Promise<ReadonlyMap<string, readonly string[]>> {
  const protocol = await protocolWithin(reach);
  return new Map(
    criteria.map(({ id }) => [id, beganWithin(protocol, id, reach.practices, period)]),
  );
}

/** The measures in the period, and as they are shown: a rate with few units on four quarters. */
export async function measureFigures(
  reach: FiguresReach,
  period: Period,
): Promise<{ quarter: Figure[]; shown: Figure[] }> {
  const found = await Promise.all(
    [medians, rates].map((measures) =>
      figures(reach, { measures, periods: [period], by: ["group", "clinician"] }),
    ),
  );
  const quarter = found.flat();
  return { quarter, shown: await onFourQuarters(reach, period, quarter) };
}

/** Criteria in the period, by clinician or, for what staff and equipment do together, by chair. */
export async function adherenceOf(
  reach: FiguresReach,
  period: Period,
  criteria: readonly Criterion[],
): Promise<Figure[]> {
  const found = await Promise.all(
    (["clinician", "chair"] as const).map((kind) =>
      figures(reach, {
        measures: criteria
          .filter((one) => one.byClinician === (kind === "clinician"))
          .map(criterionMeasure),
        periods: [period],
        by: ["group", "practice", kind],
      }),
    ),
  );
  return found.flat();
}

/** Counts alone, of the whole, in page order; kept until the records change. */
export function completeness(
  reach: FiguresReach,
  period: Period,
): Promise<readonly Completeness[]> {
  return keptWithin(reach, ["completeness", period], () => counted(reach, period));
}

async function counted(reach: FiguresReach, period: Period): Promise<Completeness[]> {
  // Per instrument, completeness is read on the measure's own page: it is the one slow count.
  const toComplete = (await measuresShown(reach, [period])).filter(
    (id) => id !== "separation-per-instrument",
  );
  const found = await tallies(reach, {
    measures: toComplete,
    periods: [period],
    by: ["group"],
    ends: medianEnds(level),
    countsAlone: true,
  });
  return found
    .map(completenessOf)
    .sort((one, other) => toComplete.indexOf(one.measure) - toComplete.indexOf(other.measure));
}
