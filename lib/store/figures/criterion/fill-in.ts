/** What `{place}` and `{whose}` stand for: conditions on practice and day, and on the clinician, over columns of the facts. */
export type Within = { readonly place: string; readonly whose: string };

/** A query over units with both filled in. */
export function fillIn(sql: string, { place, whose }: Within): string {
  return sql.replaceAll("{place}", place).replaceAll("{whose}", whose);
}
