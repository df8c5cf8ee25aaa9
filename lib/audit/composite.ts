import type { MetCounts, OpportunityTally } from "@/lib/measures/opportunities";
import type { Subject } from "@/lib/measures/tally";
import { allOrNoneOf, type Composite, opportunityScoreOf } from "@/lib/statistics/composite";
import type { FigureInterval } from "./figure";
import { level } from "./level";
import { fewestUnits } from "./too-few-to-tell";

/** A share with its counts and interval; the estimate is null where there is nothing to share. */
export type Score = MetCounts & {
  readonly estimate: number | null;
  /** Null where there is but one visit. */
  readonly interval: FigureInterval | null;
};

/** Both overall scores of a subject's visits: a summary over unlike things, and no verdict. */
export type CompositeFigure = {
  readonly about: Subject;
  /** The period's name. */
  readonly period: string;
  /** Opportunities met, one a criterion and visit; the interval has visits as clusters. */
  readonly opportunities: Score;
  /** All or none: visits with every opportunity met. */
  readonly visits: Score;
  /** So few visits that nothing is read into either. */
  readonly tooFew: boolean;
  readonly byCriterion: OpportunityTally["byCriterion"];
};

/** Counts become both scores (Nolan & Berwick 2006), with intervals by visit. */
export function compositeOf(tally: OpportunityTally): CompositeFigure {
  const { subject, period, opportunities, visits, clusters, byCriterion } = tally;
  return {
    about: subject,
    period: period.name,
    opportunities: scoreOf(opportunities, opportunityScoreOf(clusters, level)),
    visits: scoreOf(visits, allOrNoneOf(visits.met, visits.of, level)),
    tooFew: visits.of < fewestUnits,
    byCriterion,
  };
}

function scoreOf(counts: MetCounts, score: Composite | undefined): Score {
  return {
    ...counts,
    estimate: score?.estimate ?? null,
    interval: score?.interval ?? null,
  };
}
