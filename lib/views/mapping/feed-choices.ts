import type { ColumnFacts } from "./column-facts";
import type { FeedDraft } from "./draft";
import { newFeed } from "./new-feed";
import type { FieldTerms } from "./terms";

/** What may feed a field, as the values of one choice; a column's name stands behind its mark. */
export const feedMarks = { nothing: "", always: "always", numbered: "numbered", column: "c:" };

export function feedValue(feed: FeedDraft | undefined): string {
  if (!feed) return feedMarks.nothing;
  if ("always" in feed) return feedMarks.always;
  if ("numbered" in feed) return feedMarks.numbered;
  return `${feedMarks.column}${feed.columns[0] ?? ""}`;
}

/** The feed that a choice stands for; what was said of the same column before stays. */
export function chosenFeed(
  value: string,
  field: FieldTerms,
  columns: readonly ColumnFacts[],
  before: FeedDraft | undefined,
): FeedDraft | undefined {
  if (value === feedMarks.nothing) return undefined;
  if (value === feedMarks.numbered) return { numbered: true };
  if (value === feedMarks.always)
    return { always: field.choices.length === 1 ? (field.choices[0]?.value ?? "") : "" };
  const column = value.slice(feedMarks.column.length);
  return newFeed(field, [column], columns, before && "columns" in before ? before : undefined);
}
