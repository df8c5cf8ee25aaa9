import type { CompositeFigure, Score } from "@/lib/audit/composite";
import type { Criterion } from "@/lib/protocol/criterion";
import { countsOverall } from "@/lib/protocol/overall";
import { rowLabel } from "./interval-chart";
import { count, percent } from "./quantity";
import { subjectId } from "./subject-id";
import { subjectName } from "./subject-name";

/** One score in words. */
export type ScoreWords = {
  /** The share, or why there is none. */
  readonly estimate: string;
  readonly missing: boolean;
  /** "88.1 % to 91.7 %"; empty where there is no share. */
  readonly interval: string;
  /** "812 of 906 opportunities" */
  readonly counts: string;
  /** What became of those not met. */
  readonly notMet: string;
};

/** Both scores of a subject. */
export type CompositeRow = {
  readonly id: string;
  readonly name: string;
  readonly whole: boolean;
  readonly opportunities: ScoreWords;
  readonly visits: ScoreWords;
};

/** What a clinician's own scores are made of. */
export type CompositePart = {
  readonly id: string;
  readonly title: string;
  readonly counts: string;
  readonly share: string;
  readonly notRecorded: string;
};

export type CompositeView = {
  readonly rows: readonly CompositeRow[];
  /** What the scores are, and what they are not. */
  readonly about: readonly string[];
};

/** What both scores are called. */
export const scoreNames = {
  opportunities: "Opportunities met",
  visits: "Visits with everything met",
} as const;

/** Above everything else about them. */
export const noVerdict =
  "Unlike things are counted together here: a summary, and no verdict. The criteria themselves say what to look at.";

/**
 * Both overall scores in words; rows in the order given.
 * @param criteria in force in the period
 * @param nameOf what a subject is called
 */
export function compositeView(
  figures: readonly CompositeFigure[],
  criteria: readonly Criterion[],
  nameOf: (figure: CompositeFigure) => string = ({ about }) => rowLabel(about),
): CompositeView {
  const clinicians = figures.some(({ about }) => about.kind === "clinician");
  return {
    rows: figures.map((figure) => ({
      id: `${figure.about.kind} ${subjectId(figure.about)}`,
      name: nameOf(figure),
      whole: figure.about.kind === "group",
      opportunities: scoreWords(figure, figure.opportunities, unitNames.opportunities),
      visits: scoreWords(figure, figure.visits, unitNames.visits),
    })),
    about: [
      "An opportunity is one criterion at one visit. It is met when every unit there that is neither left out nor excepted is met, so that a visit of many canals weighs no more. What is not recorded is among those counted and stands apart from what was not met.",
      "Everything met: of the visits with an opportunity, those at which each was met, all or none.",
      leftOutWords(criteria),
      ...(clinicians ? [ofCliniciansWords(criteria)] : []),
      "A criterion counts from the day on which it was written, so that a later one never alters a past score.",
      "95 % intervals by Wilson: that of opportunities allows for those of one visit resembling each other; both take visits as independent of one another. Opportunity score and all-or-none after Nolan & Berwick 2006, JAMA 295:1168.",
    ],
  };
}

/** Each criterion's opportunities, in page order. */
export function compositeParts(
  figure: CompositeFigure,
  criteria: readonly Criterion[],
): CompositePart[] {
  return figure.byCriterion.map(({ criterion, met, of, notRecorded }) => ({
    id: criterion,
    title: criteria.find(({ id }) => id === criterion)?.title ?? criterion,
    counts: `${count(met)} of ${count(of)}`,
    share: percent(met / of),
    notRecorded: count(notRecorded),
  }));
}

/** Both scores as lines of text. */
export function compositeLines(figure: CompositeFigure): string[] {
  return (["opportunities", "visits"] as const).map((score) => {
    const words = scoreWords(figure, figure[score], unitNames[score]);
    const method = methods[figure[score].interval?.method ?? ""];
    return `${scoreNames[score]}, ${subjectName(figure.about)}, ${figure.period}: ${words.estimate}${words.interval ? `, 95 % interval ${words.interval}` : ""}${words.interval && method ? ` (${method})` : ""} (${words.counts}; ${words.notMet})`;
  });
}

/** One and several of what each score counts. */
const unitNames = {
  opportunities: ["opportunity", "opportunities"],
  visits: ["visit", "visits"],
} as const;

/** The clusters are visits here, not patients. */
const methods: Readonly<Record<string, string>> = {
  wilson: "Wilson",
  "clustered-wilson": "Wilson, by visit",
  "clustered-clopper-pearson": "Clopper–Pearson on visits",
};

function scoreWords(
  { tooFew }: CompositeFigure,
  score: Score,
  [one, many]: readonly [string, string],
): ScoreWords {
  const { met, of, notRecorded, estimate, interval } = score;
  const none = estimate === null ? "nothing to count" : tooFew ? "too few to tell" : null;
  const notMet = of - met - notRecorded;
  return {
    estimate: none ?? percent(estimate ?? 0),
    missing: none !== null,
    interval:
      none === null && interval ? `${percent(interval.lower)} to ${percent(interval.upper)}` : "",
    counts: `${count(met)} of ${count(of)} ${of === 1 ? one : many}`,
    notMet: `${count(notMet)} not met, ${count(notRecorded)} not recorded`,
  };
}

function leftOutWords(criteria: readonly Criterion[]): string {
  const ofChairs = criteria.filter(({ unit }) => unit === "chair-day");
  const ofRecords = criteria.filter((one) => one.unit !== "chair-day" && !countsOverall(one));
  const listed = [
    ...(ofChairs.length > 0 ? [`${titles(ofChairs)} (of a chair's day and of no visit)`] : []),
    ...(ofRecords.length > 0 ? [`${titles(ofRecords)} (about the record itself)`] : []),
  ];
  const counted = criteria.length - ofChairs.length - ofRecords.length;
  const words = `${count(counted)} of the ${count(criteria.length)} criteria in force count`;
  return listed.length > 0 ? `${words}; left out: ${listed.join(", ")}.` : `${words}.`;
}

function ofCliniciansWords(criteria: readonly Criterion[]): string {
  const together = criteria.filter((one) => !one.byClinician && countsOverall(one));
  const without =
    together.length > 0
      ? `, without what staff and equipment do together (${titles(together)})`
      : "";
  return `A clinician's are those of the visits they led${without}: they do not add up to the practice's.`;
}

function titles(criteria: readonly Criterion[]): string {
  return criteria.map(({ title }) => title).join(", ");
}
