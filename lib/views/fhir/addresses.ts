/** Under which everything of our own is named; .invalid is kept free for names that lead nowhere (RFC 2606). */
const base = "https://canal-audit.invalid/fhir";

/** The canonical address of a resource that defines something. */
export function canonicalOf(type: "Measure" | "StructureDefinition", id: string): string {
  return `${base}/${type}/${id}`;
}

/** The system that an identifier or code of ours is unique in. */
export function identifierSystem(
  what: "report-fingerprint" | "software" | "practice" | "clinician-label",
): string {
  return `${base}/identifier/${what}`;
}
