/**
 * Fields that a mapping may feed beside the table's own columns: they find the visit of a row that has no session_id. The
 * visit is the one at that time (within `minutes`), and of that chair, tooth, canal and practice as far as they are fed.
 */
export const visitFields = [
  "visit.chair",
  "visit.at",
  "visit.until",
  "visit.tooth",
  "visit.tooth_notation",
] as const;
export type VisitField = (typeof visitFields)[number];
