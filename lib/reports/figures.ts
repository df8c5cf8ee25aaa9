import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { measures } from "@/lib/measures/measures";
import type { StratumKind, SubjectKind } from "@/lib/measures/tally";
import { criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { tallies } from "@/lib/store/figures/tallies";
import { criteriaShown } from "./criteria-shown";
import { keptWithin } from "./kept-within";

export type FiguresAsked = {
  /** Ids of measures, or criterion/<id>; all where absent. */
  readonly measures?: readonly string[];
  readonly periods: readonly Period[];
  readonly by: readonly SubjectKind[];
  /** Measures of canals apart by technique or by case. */
  readonly strata?: StratumKind;
};

/** Every measure, and the criteria in force within the reach on some day of the periods, in page order. */
export async function measuresShown(
  reach: FiguresReach | OwnReach,
  periods: readonly Period[],
): Promise<string[]> {
  const criteria = await criteriaShown(reach, periods);
  return [...measures.map((measure) => measure.id), ...criteria.map(criterionMeasure)];
}

/**
 * The figures within the reach, in the order of measure, period and subject. A subject without units has none. They
 * are kept until the records change.
 */
export async function figures(
  reach: FiguresReach | OwnReach,
  asked: FiguresAsked,
): Promise<Figure[]> {
  return [...(await keptWithin(reach, asked, () => computed(reach, asked)))];
}

async function computed(reach: FiguresReach | OwnReach, asked: FiguresAsked): Promise<Figure[]> {
  const wanted = asked.measures ?? (await measuresShown(reach, asked.periods));
  const found = await tallies(reach, { ...asked, measures: wanted, ends: medianEnds(level) });
  const place = new Map(wanted.map((measure, index) => [measure, index]));
  const order = (figure: Figure) => place.get(figure.measure) ?? wanted.length;
  return found.map(figureOf).sort((a, b) => order(a) - order(b));
}
