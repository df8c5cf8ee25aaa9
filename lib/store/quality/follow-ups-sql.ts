/**
 * SQL: one row of what the follow-ups of an instrument row say: `told`, true where any says that the patient was told,
 * else false where any says not; `management` of the latest that names one.
 */
export function followUpsOf(use: string): string {
  return `select bool_or(n.patient_told) as told,
    (array_agg(n.management order by n.day desc) filter (where n.management is not null))[1] as management
    from followups n where n.visit_id = ${use}.visit_id and n.canal = ${use}.canal and n.seq = ${use}.seq`;
}
