import type { Viewer } from "@/lib/access/viewer";
import { outcomeOf } from "@/lib/protocol/outcome";
import type { Values } from "@/lib/records/column";
import { type TableName, tableNames } from "@/lib/records/tables";
import { correctionsOfVisit } from "@/lib/store/corrections/corrections-made";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { type VisitHead, visitHead } from "@/lib/store/visit/visit-head";
import {
  type HeldOfVisit,
  heldOfVisit,
  type VisitRow,
  visitRows,
} from "@/lib/store/visit/visit-rows";
import { visitUnits } from "@/lib/store/visit/visit-units";
import { correctionSentence } from "@/lib/views/correction-lines";
import { day, moment } from "@/lib/views/day";
import { ownWordsOf } from "@/lib/views/protocol/own-words";
import { reasonWords } from "@/lib/views/reason-words";
import { rowWords, tableWords } from "@/lib/views/record-words";
import { type VisitCriterion, visitCriteria } from "@/lib/views/visit-criteria";
import { type TimeLine, timeLine } from "@/lib/views/visit-time-line";
import { criteriaOn } from "./criteria-shown";
import { leadOrOwnAt } from "./lead-or-own";

/** A place in a file in words. */
type Source = { readonly file: string; readonly line: number };

export type VisitView = {
  readonly sessionId: string;
  readonly where: string;
  readonly facts: readonly { readonly term: string; readonly words: string }[];
  readonly timeLine: TimeLine;
  readonly criteria: readonly VisitCriterion[];
  readonly held: readonly {
    readonly id: string;
    readonly table: string;
    readonly key: string;
    readonly source: Source;
    readonly sentences: readonly string[];
  }[];
  /** Rows of the visit that a newer version took the place of, each in a sentence. */
  readonly corrections: readonly string[];
  readonly sources: readonly {
    readonly table: string;
    readonly rows: readonly {
      readonly id: string;
      readonly words: string;
      readonly source: Source;
      readonly again: readonly Source[];
    }[];
  }[];
};

/**
 * One visit with its criteria and where each row came from; null where there is none. For the clinical lead of its
 * practice and for the clinician who worked on it.
 *
 * @throws Refused
 */
export async function visitView(
  viewer: Viewer,
  practice: string,
  sessionId: string,
): Promise<VisitView | null> {
  const { lead, own } = leadOrOwnAt(viewer, practice);
  const reach = lead ?? own;
  const head = await visitHead(reach, practice, sessionId);
  if (!head) return null;
  const criteria = await criteriaOn(reach, head.practice, head.day);
  const [rows, held, corrections, units, terms] = await Promise.all([
    visitRows(head),
    heldOfVisit(head),
    correctionsOfVisit(head),
    visitUnits(
      reach,
      head,
      criteria.map(({ id }) => id),
    ),
    ownTerms(reach),
  ]);
  const of = (table: TableName) =>
    rows.filter((row) => row.table === table).map((row) => row.values);
  const judged = units.map(({ criterion, canal, seq, unit, counted }) => ({
    criterion,
    canal,
    seq,
    unit,
    outcome: outcomeOf(criterion, unit) ?? counted,
  }));
  const words = ownWordsOf(terms.filter((one) => one.practice === head.practice));
  return {
    sessionId: head.sessionId,
    where: `${head.practiceName}, chair ${head.chair}, ${day(head.day)}`,
    facts: factsOf(head, of("sessions")[0] ?? {}),
    timeLine: timeLine(of("canals"), of("irrigation"), of("instruments")),
    criteria: visitCriteria(criteria, judged, head, words),
    held: held.map(heldLine),
    corrections: corrections.map(correctionSentence),
    sources: sourcesOf(rows, head.zone),
  };
}

function factsOf(head: VisitHead, visit: Values): VisitView["facts"] {
  const instant = (value: Values[string]) =>
    value === undefined ? "not recorded" : moment(new Date(String(value)), head.zone);
  const words = (value: Values[string]) =>
    value === undefined ? "not recorded" : reasonWords(String(value));
  const supervisor = visit.supervisor === undefined ? "" : `, supervised by ${visit.supervisor}`;
  return [
    { term: "Patient", words: `${visit.patient} (pseudonym)` },
    { term: "Tooth", words: `${visit.tooth} (ISO 3950)` },
    { term: "Treatment", words: words(visit.treatment) },
    { term: "Outcome", words: words(visit.outcome) },
    { term: "Clinician", words: `${visit.clinician}${supervisor}` },
    { term: "Started", words: instant(visit.started_at) },
    { term: "Ended", words: instant(visit.ended_at) },
    { term: "Pulp on arrival", words: words(visit.pulp) },
    { term: "Difficulty", words: words(visit.difficulty) },
    {
      term: "Course of treatment",
      words: visit.case_id === undefined ? "not recorded" : String(visit.case_id),
    },
  ];
}

function heldLine(row: HeldOfVisit): VisitView["held"][number] {
  const sentences = row.reasons.map((reason) => reason.sentence);
  return {
    id: `${row.place.file}/${row.place.line}`,
    table: tableWords[row.table],
    key: row.key,
    source: row.place,
    sentences,
  };
}

function sourcesOf(rows: readonly VisitRow[], zone: string): VisitView["sources"] {
  return tableNames.flatMap((table) => {
    const own = rows
      .filter((row) => row.table === table)
      .sort((one, other) => one.place.line - other.place.line);
    if (own.length === 0) return [];
    return [
      {
        table: tableWords[table],
        rows: own.map((row) => ({
          id: row.id,
          words: rowWords(table, row.values, zone),
          source: row.place,
          again: row.witnesses,
        })),
      },
    ];
  });
}
