import type { Subject } from "@/lib/measures/tally";

/** What tells a subject from others, for keys. */
export function subjectId(about: Subject): string {
  if (about.kind === "group") return "group";
  if (about.kind === "clinician") return about.key;
  return about.kind === "chair" ? `${about.practice}/${about.code}` : about.code;
}
