import { day } from "./day";
import { exceptionAddress } from "./exception-address";
import { unitWords } from "./exception-line-words";
import { type QueryInput, type QueryLine, queryLine } from "./exception-queries";

/** A question about an exception that is not closed. */
export type OpenQuestion = QueryLine & {
  readonly href: string;
  /** "3 Jul 2026, tooth 26, canal MB1, C02: Timer reset for the canal" */
  readonly about: string;
};

export function openQuestion(
  query: QueryInput & {
    readonly practice: string;
    readonly sessionId: string;
    readonly criterion: string;
    readonly canal: string;
    readonly tooth: string;
    readonly day: string;
    readonly clinician: string;
  },
  title: string,
  zone: string,
): OpenQuestion {
  return {
    ...queryLine(query, zone),
    id: [query.practice, query.sessionId, query.canal, query.criterion].join("/"),
    href: exceptionAddress(query),
    about: `${day(query.day)}, ${unitWords(query)}, ${query.clinician}: ${title}`,
  };
}
