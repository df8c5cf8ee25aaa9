/** What a person may be. A role is held in one practice or in the group. */
export const roles = [
  "clinical-lead",
  "clinician",
  "quality-officer",
  "record-keeper",
  "administrator",
] as const;
export type Role = (typeof roles)[number];
