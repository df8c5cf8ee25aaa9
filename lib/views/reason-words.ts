const words: Record<string, string> = {
  "no-timer": "without a timer",
  "not-prepared": "not prepared",
  "not-applicable": "not applicable",
  "out-of-service": "out of service",
  dressing: "dressing only",
  emergency: "emergency treatment",
  other: "other treatment",
  "not-possible": "not possible",
};

/** A coded reason as it is read; a practice's own code with its hyphens taken out. */
export function reasonWords(reason: string): string {
  return words[reason] ?? reason.replaceAll("-", " ");
}
