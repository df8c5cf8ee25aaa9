import type { Subject } from "@/lib/measures/tally";
import type { AuditContent } from "./audit-content";

/** How clinicians are called in a report: not at all, by codes drawn for it alone, or by their own. */
export type ClinicianNames = "none" | "redrawn" | "codes";

/** What a report calls each clinician: by key, a code drawn anew. @param order a hash of what it is given, in hexadecimal */
export function redrawnCodes(
  keys: readonly string[],
  order: (key: string) => string,
): Map<string, string> {
  const drawn = [...new Set(keys)].sort((one, other) => (order(one) < order(other) ? -1 : 1));
  return new Map(drawn.map((key, place) => [key, `Clinician ${letters(place)}`]));
}

/** Every clinician of an audit, by key. */
export function clinicianKeys({ computed }: AuditContent): string[] {
  const figures = [...computed.adherence, ...computed.across];
  const keys = figures.flatMap(({ about }) => (about.kind === "clinician" ? [about.key] : []));
  return [...new Set(keys)].sort();
}

function letters(place: number): string {
  const last = String.fromCharCode(65 + (place % 26));
  return place < 26 ? last : `${letters(Math.floor(place / 26) - 1)}${last}`;
}

/**
 * The content with every clinician called by the report's own codes. Figures keep their places, so that flags still point at theirs.
 */
export function withCodes(content: AuditContent, codes: ReadonlyMap<string, string>): AuditContent {
  const recoded = <Of extends { readonly about: Subject }>(one: Of): Of => {
    if (one.about.kind !== "clinician") return one;
    const code = codes.get(one.about.key) ?? "Clinician";
    return { ...one, about: { kind: "clinician", code, key: one.about.key } };
  };
  const { computed } = content;
  return {
    ...content,
    computed: {
      ...computed,
      adherence: computed.adherence.map(recoded),
      across: computed.across.map(recoded),
      composites: computed.composites.map(recoded),
      own: computed.own.map((one) => ({ ...one, figure: recoded(one.figure) })),
    },
  };
}
