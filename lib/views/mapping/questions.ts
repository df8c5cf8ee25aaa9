import { clockChoices, clockValue } from "./clock-words";
import type { ColumnFacts } from "./column-facts";
import { type Doubt, doubtsOf } from "./doubts";
import type { FeedDraft, MappingDraft, TableDraft } from "./draft";
import type { Choice, TableTerms } from "./terms";

/** A question about a column that its contents leave open, with its answers and the one that was given. */
export type Question = {
  readonly about: "day-order" | "tooth";
  readonly column: string;
  readonly answers: readonly Choice[];
  /** Empty while none is given. */
  readonly given: string;
  readonly at: readonly { readonly table: number; readonly field: string }[];
};

/** The questions about columns, those that were answered too, so that an answer can be seen and changed. */
export function questionsOf(
  draft: MappingDraft,
  columns: readonly ColumnFacts[],
  terms: readonly TableTerms[],
): Question[] {
  const bare = { ...draft, tables: draft.tables.map(unanswered) };
  return doubtsOf(bare, columns, terms, false)
    .flatMap((doubt) => (doubt.about === "decimal" ? [] : [question(doubt, draft, terms)]))
    .filter(({ answers, given }) => answers.length > 1 || given === "");
}

/** The draft with the answer given to every feed that the question concerns. */
export function answeredWith(
  draft: MappingDraft,
  { about, at }: Question,
  answer: string,
): MappingDraft {
  const [day = "", hours = ""] = answer.split(" ");
  return {
    ...draft,
    tables: draft.tables.map((table, place) => {
      const here = at.filter((one) => one.table === place).map(({ field }) => field);
      const changed = here.map((field): [string, FeedDraft] => {
        const feed = table.fields[field];
        return about === "day-order" && feed && "columns" in feed
          ? [field, { ...feed, clock: { day, hours: Number(hours) } }]
          : [field, { always: answer }];
      });
      return { ...table, fields: { ...table.fields, ...Object.fromEntries(changed) } };
    }),
  };
}

function question(
  doubt: Exclude<Doubt, { about: "decimal" }>,
  draft: MappingDraft,
  terms: readonly TableTerms[],
): Question {
  const { about, column, at } = doubt;
  const answers =
    doubt.about === "day-order"
      ? clockChoices.filter(({ value }) => doubt.clocks.some((one) => clockValue(one) === value))
      : (notation(terms)?.choices ?? []).filter(({ value }) => doubt.notations.includes(value));
  const given = new Set(at.map((one) => givenIn(draft, one)));
  const [only = ""] = given;
  return { about, column, at, answers, given: given.size === 1 ? only : "" };
}

function givenIn(draft: MappingDraft, { table, field }: { table: number; field: string }): string {
  const feed = draft.tables[table]?.fields[field];
  if (!feed || "numbered" in feed) return "";
  return "always" in feed ? feed.always : clockValue(feed.clock);
}

function notation(terms: readonly TableTerms[]) {
  return terms
    .find(({ name }) => name === "sessions")
    ?.fields.find(({ name }) => name === "tooth_notation");
}

function unanswered(table: TableDraft): TableDraft {
  const fields = Object.entries(table.fields).flatMap(([name, feed]): [string, FeedDraft][] => {
    if (name.endsWith("tooth_notation") && "always" in feed) return [];
    if (!("columns" in feed)) return [[name, feed]];
    const { clock: _, ...others } = feed;
    return [[name, others]];
  });
  return { ...table, fields: Object.fromEntries(fields) };
}
