import { moment } from "./day";

/** A question about an exception, as it is kept. */
export type QueryInput = {
  readonly question: string;
  readonly by: string;
  readonly at: Date;
  readonly answer: string | null;
  readonly answeredBy: string | null;
  readonly answeredAt: Date | null;
  readonly closedBy: string | null;
  readonly closedAt: Date | null;
};

/** What was asked, answered and closed, each with who and when. */
export type QueryLine = {
  readonly id: string;
  readonly state: "asked" | "answered" | "closed";
  readonly says: readonly { readonly term: string; readonly words: string; readonly who: string }[];
};

export function queryLine(query: QueryInput, zone: string): QueryLine {
  const { question, answer, answeredAt, closedAt } = query;
  const who = (by: string | null, at: Date) => `${by ?? "somebody"}, ${moment(at, zone)}`;
  return {
    id: query.at.toISOString(),
    state: closedAt ? "closed" : answeredAt ? "answered" : "asked",
    says: [
      { term: "Asked", words: question, who: who(query.by, query.at) },
      ...(answeredAt
        ? [{ term: "Answered", words: answer ?? "", who: who(query.answeredBy, answeredAt) }]
        : []),
      ...(closedAt
        ? [
            {
              term: "Closed",
              words: answeredAt ? "" : "without an answer",
              who: who(query.closedBy, closedAt),
            },
          ]
        : []),
    ],
  };
}
