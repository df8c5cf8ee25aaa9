/**
 * SQL: ids of the visits that held rows `h` belong to: the one that the row names, or every one that it may belong to where the row
 * found more than one.
 *
 * @param which condition on `h`
 */
export function visitsOfHeld(which: string): string {
  return `
    select v.id from held h join sessions v on v.session_id = h.session_id and (h.practice is null or h.practice = v.practice) where ${which}
    union all
    select c.id::bigint from held h cross join jsonb_array_elements_text(h.values -> 'candidate_visits') c (id)
    where h.kind = 'several-visits' and ${which}`;
}
