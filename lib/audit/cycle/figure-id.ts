import type { Figure } from "@/lib/audit/figure";
import type { Subject } from "@/lib/measures/tally";

/** What tells a figure from the others of its period: its measure and whose it is. */
export function figureId({ measure, about }: Pick<Figure, "measure" | "about">): string {
  return `${measure} ${placeId(about)}`;
}

/** What tells a subject from the others. */
export function placeId(about: Subject): string {
  if (about.kind === "group") return "group";
  if (about.kind === "clinician") return `clinician ${about.key}`;
  return `${about.kind} ${about.kind === "chair" ? `${about.practice}/` : ""}${about.code}`;
}
