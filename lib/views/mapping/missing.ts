import type { FeedDraft, MappingDraft, TableDraft } from "./draft";
import type { TableTerms } from "./terms";

/** Required fields that nothing feeds, by the place of their table in the draft. */
export function missingOf(
  draft: MappingDraft,
  terms: readonly TableTerms[],
): { readonly table: number; readonly field: string }[] {
  return draft.tables.flatMap((one, place) => {
    const fed = fedFields(one);
    return (terms.find(({ name }) => name === one.table)?.fields ?? [])
      .filter(({ name, required }) => required && !fed.has(name))
      .map(({ name }) => ({ table: place, field: name }));
  });
}

/** The columns of the file that no feed and no condition reads. */
export function unusedColumns(draft: MappingDraft, columns: readonly string[]): string[] {
  const read = new Set(
    draft.tables.flatMap(({ fields, only = [] }) => [
      ...Object.values(fields).flatMap((feed) => ("columns" in feed ? feed.columns : [])),
      ...only.map(({ column }) => column),
    ]),
  );
  return columns.filter((name) => !read.has(name));
}

/** The fields of a table that something fills: a feed, or a word that fills two; a visit may be found instead of named. */
export function fedFields({ fields }: TableDraft): Set<string> {
  const also = Object.values(fields).flatMap(alsoFilled);
  const found = "visit.at" in fields ? ["session_id"] : [];
  return new Set([...Object.keys(fields), ...also, ...found]);
}

function alsoFilled(feed: FeedDraft): string[] {
  if (!("columns" in feed)) return [];
  return (feed.words ?? []).flatMap(({ also }) => Object.keys(also ?? {}));
}
