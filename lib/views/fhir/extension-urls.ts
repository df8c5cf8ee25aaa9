import { canonicalOf } from "./addresses";

/** The addresses of the extensions of our own; their definitions travel in the bundle. */
export const extensionUrls = {
  interval: canonicalOf("StructureDefinition", "score-interval"),
  countedNotRecorded: canonicalOf("StructureDefinition", "counted-not-recorded"),
  uncountedNotRecorded: canonicalOf("StructureDefinition", "uncounted-not-recorded"),
  byReason: canonicalOf("StructureDefinition", "population-by-reason"),
} as const;
