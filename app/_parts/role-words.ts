import type { Role } from "@/lib/access/role";

/** What a role is called where people read it. */
export const roleWords: Record<Role, string> = {
  "clinical-lead": "Clinical lead",
  clinician: "Clinician",
  "quality-officer": "Quality officer",
  "record-keeper": "Record keeper",
  administrator: "Administrator",
};

/** What a role may see, in a sentence for the person who gives it. */
export const roleMeaning: Record<Role, string> = {
  "clinical-lead": "Sees every figure of the practice, by clinician, and the records behind it.",
  clinician: "Sees their own figures and records, and nobody else's.",
  "quality-officer":
    "Sees adherence by practice and chair, without clinicians, and exports the report.",
  "record-keeper": "Brings record files in and mends rows that were held. Sees no figures.",
  administrator: "Keeps people, practices and settings. Sees no figures.",
};

/** The name of a role as it is stored; one that is not known is shown as it is. */
export function roleName(role: string): string {
  return role in roleWords ? roleWords[role as Role] : role;
}
