// The one place where a coded reason is worded, of the form, of pages and of lists.
const words: Record<string, string> = {
  alternative: "another agent was used instead",
  calcified: "calcified canal",
  "equipment-failure": "equipment failed",
  "locator-unusable": "apex locator could not be used",
  "not-tolerated": "the patient could not tolerate it",
  "filling-not-removed": "old filling not removed",
  "no-timer": "without a timer",
  "not-prepared": "not prepared",
  "not-applicable": "not applicable",
  "out-of-service": "out of service",
  dressing: "dressing only",
  emergency: "emergency treatment",
  other: "other treatment",
};

/** A coded reason as it is read; a practice's own code, where its words are not at hand, without its beginning and hyphens. */
export function reasonWords(reason: string): string {
  return words[reason] ?? reason.replace(/^own-/, "").replaceAll("-", " ");
}
