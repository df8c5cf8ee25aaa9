import type { ConditionDraft, FeedDraft, MappingDraft, TableDraft } from "./draft";

/** The draft without what is begun and not filled in yet: feeds without a text, conditions without a column. */
export function sendable(draft: MappingDraft): MappingDraft {
  return { ...draft, tables: draft.tables.map(table) };
}

function table({ only, fields, ...rest }: TableDraft): TableDraft {
  const conditions = (only ?? []).filter(isWhole);
  const whole = Object.entries(fields).filter(([, feed]) => isFilled(feed));
  return {
    ...rest,
    ...(conditions.length > 0 ? { only: conditions } : {}),
    fields: Object.fromEntries(whole),
  };
}

function isFilled(feed: FeedDraft): boolean {
  if ("always" in feed) return feed.always.trim() !== "";
  return "numbered" in feed || feed.columns.length > 0;
}

function isWhole({ column, is, not }: ConditionDraft): boolean {
  return column !== "" && (is !== undefined || not !== undefined);
}
