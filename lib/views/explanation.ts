import type { Criterion, Outcome } from "@/lib/protocol/criterion";
import type { Explanation } from "@/lib/protocol/explain";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import type { Values } from "@/lib/records/column";
import type { Place } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import { type ClauseLine, type ClauseSources, clauseLine } from "./clause-line";
import { day } from "./day";
import { exceptionAddress } from "./exception-address";
import { outcomeMark } from "./outcome-mark";
import { ownReasonWords } from "./protocol/code-words";
import type { OwnWords } from "./protocol/own-words";
import { reasonWords } from "./reason-words";
import { visitAddress } from "./visit-address";
import { mayBeExcepted } from "./visit-criteria";

/** Why a unit counts as it does, as a page reads it. */
export type ExplanationView = {
  readonly criterion: { readonly id: string; readonly title: string; readonly statement: string };
  readonly where: string;
  readonly unit: string;
  readonly visitHref: string | null;
  /** Where its exception is entered or asked about; null where none is foreseen or needed. */
  readonly exceptionHref: string | null;
  readonly mark: string;
  readonly outcome: string;
  /** Which step settled it, in a sentence. */
  readonly because: string;
  /** The steps in the order in which they are looked at. */
  readonly steps: readonly ExplanationStep[];
};

export type ExplanationStep = {
  readonly id: string;
  readonly title: string;
  readonly settled: boolean;
  readonly says: string;
  readonly clauses: readonly ClauseLine[];
};

export type ExplanationOf = {
  readonly criterion: Criterion;
  readonly canal: string;
  readonly seq: number | null;
  readonly head: {
    readonly practice: string;
    readonly practiceName: string;
    readonly sessionId: string;
    readonly chair: string;
    readonly day: string;
  };
  readonly unit: JudgedUnit;
  readonly explanation: Explanation;
  readonly counted: Outcome;
  readonly rows: readonly {
    readonly table: TableName;
    readonly id: string;
    readonly values: Values;
    readonly place: Place;
  }[];
  readonly places: ReadonlyMap<string, Place & { readonly sessionId: string | null }>;
  readonly mayOpenVisit: boolean;
  /** The practice's own terms in words. */
  readonly own: OwnWords;
  readonly titleOf: (id: string) => string;
};

/** The explanation in words; every value with the file and line it came from. */
export function explanationView(of: ExplanationOf): ExplanationView {
  const { criterion, head, explanation, counted, canal, seq } = of;
  const chairDay = criterion.unit === "chair-day";
  return {
    criterion: { id: criterion.id, title: criterion.title, statement: criterion.statement },
    where: `${head.practiceName}, chair ${head.chair}, ${day(head.day)}`,
    unit: chairDay
      ? "the chair's day"
      : [
          `visit ${head.sessionId}`,
          canal ? `canal ${canal}` : "",
          seq === null ? "" : `${criterion.unit} number ${seq}`,
        ]
          .filter(Boolean)
          .join(", "),
    visitHref: chairDay || !of.mayOpenVisit ? null : visitAddress(head.practice, head.sessionId),
    exceptionHref:
      of.mayOpenVisit && mayBeExcepted(criterion, counted)
        ? exceptionAddress({
            practice: head.practice,
            sessionId: head.sessionId,
            criterion: criterion.id,
            canal,
          })
        : null,
    ...outcomeMark(criterion, counted, of.own),
    because: becauseWords(of),
    steps: stepsOf(of, explanation),
  };
}

function stepsOf(of: ExplanationOf, explanation: Explanation): ExplanationStep[] {
  const { criterion, unit } = of;
  const settled = (step: Explanation["settledBy"]) => explanation.settledBy === step;
  const leftOut = of.counted.outcome === "excluded";
  const lines = (clause: Explanation["met"], isDemand = false) =>
    [clauseLine(clause, { ...sourcesOf(of), isDemand })].filter((line) => line !== null);
  return [
    {
      id: "population",
      title: "Is it a unit of this criterion?",
      settled: settled("population"),
      says: truthWords(explanation.population.truth, "Yes.", "No.", "That cannot be told."),
      clauses: lines(explanation.population),
    },
    ...(criterion.treatmentPopulation
      ? [
          {
            id: "treatment",
            title: "Is its canal of the treatment population?",
            settled: settled("treatment population"),
            says:
              unit.exclusion === null
                ? "Yes."
                : `No: it is left out, ${reasonWords(unit.exclusion)}.`,
            clauses: [],
          },
        ]
      : []),
    ...explanation.exclusions.map(({ reason, inWords, clause }) => ({
      id: `left-out-${reason}`,
      title: `Is it left out: ${inWords}?`,
      settled:
        settled("exclusion") && (clause.truth === true || of.counted.outcome === "not recorded"),
      says: truthWords(clause.truth, "Yes, it is left out.", "No.", "That cannot be told."),
      clauses: lines(clause),
    })),
    {
      id: "met",
      title: "Is the demand met?",
      settled: settled("met"),
      ...(leftOut
        ? { says: notAsked, clauses: [] }
        : {
            says: truthWords(
              explanation.met.truth,
              "Yes.",
              "No.",
              "That cannot be told: something is not recorded.",
            ),
            clauses: lines(explanation.met, true),
          }),
    },
    ...(criterion.exceptions
      ? [
          {
            id: "exception",
            title: "Is there a coded reason why it was rightly not met?",
            settled: settled("exception"),
            says: leftOut ? notAsked : exceptionWords(of),
            clauses: [],
          },
        ]
      : []),
  ];
}

const notAsked = "That is not asked: the unit is left out before.";

function exceptionWords({ criterion, unit, explanation, own }: ExplanationOf): string {
  if (explanation.met.truth === true) return "It needs none.";
  if (unit.exception === null) return "None is recorded.";
  const listed =
    criterion.exceptions?.reasons.includes(unit.exception) === true ||
    `reason/${unit.exception}` in own
      ? ""
      : " It is not on the criterion's list of reasons; it counts and should be looked at.";
  return `Yes: ${ownReasonWords(unit.exception, own)}.${listed}`;
}

function becauseWords({ explanation, counted, unit }: ExplanationOf): string {
  const { settledBy } = explanation;
  if (settledBy === "treatment population")
    return `Left out, because its canal is outside the treatment population: ${reasonWords(unit.exclusion ?? "")}.`;
  if (settledBy === "exception") return "Not met, with a coded reason: it is in no rate.";
  if (counted.outcome === "excluded") return "Left out before the demand is looked at.";
  if (settledBy === "population")
    return "Whether it belongs here at all cannot be told from what is recorded.";
  if (settledBy === "exclusion")
    return "Whether it should be left out cannot be told from what is recorded.";
  if (counted.outcome === "met") return "Every part of the demand that is needed holds.";
  return counted.outcome === "not met"
    ? "What is recorded shows that the demand was not met."
    : "What is recorded does not show whether the demand was met. It is not recorded, which is never “not met”; the share met is of all that are counted, and this is one of them.";
}

function truthWords(truth: boolean | undefined, yes: string, no: string, unknown: string): string {
  return truth === undefined ? unknown : truth ? yes : no;
}

function sourcesOf(of: ExplanationOf): Omit<ClauseSources, "isDemand"> {
  return {
    own: of.own,
    titleOf: of.titleOf,
    unit: of.criterion.unit,
    canal: of.canal,
    seq: of.seq,
    rows: of.rows,
    places: of.places,
    sessionId: of.head.sessionId,
  };
}
