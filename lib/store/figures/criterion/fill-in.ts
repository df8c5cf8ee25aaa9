/** What `{place}` and `{whose}` stand for: conditions on practice and day, and on the clinician, over columns of the facts. */
export type Within = { readonly place: string; readonly whose: string };

/** A query over units with both filled in, and `{visited}`: of a visit of theirs, whoever worked on what is counted there. */
export function fillIn(sql: string, { place, whose }: Within): string {
  const visited =
    whose === "true"
      ? "true"
      : `visit_id in (select visit_id from visit_facts where ${place} and ${whose})`;
  return sql
    .replaceAll("{visited}", visited)
    .replaceAll("{place}", place)
    .replaceAll("{whose}", whose);
}
