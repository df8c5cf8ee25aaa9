import type { Subject } from "@/lib/measures/tally";

/** Whom or what a figure is about, in words. */
export function subjectName(subject: Subject): string {
  if (subject.kind === "group") return "all practices";
  if (subject.kind === "practice") return `practice ${subject.code}`;
  if (subject.kind === "chair") return `chair ${subject.code} of ${subject.practice}`;
  return subject.practice
    ? `clinician ${subject.code} of ${subject.practice}`
    : `clinician ${subject.code}`;
}
