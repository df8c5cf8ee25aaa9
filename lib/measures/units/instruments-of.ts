import type { Part } from "./values";

/** Physical instruments by what is known of them. */
export type InstrumentCounts = {
  readonly units: number;
  readonly events: number;
  /** Separated, or known in every use. */
  readonly known: number;
  readonly missing: number;
};

/** Counts instruments over their uses: one that separated in any of them did, and one is known where every use is. */
export function instrumentsOf(parts: readonly Part[]): InstrumentCounts {
  // Of each practice's instruments by id: 2 separated, 1 not known in every use, 0 neither.
  const seen = new Map<string, Map<string, number>>();
  for (const [{ practice }, { numerator, missing, visits }] of parts) {
    const ids = seen.get(practice) ?? new Map<string, number>();
    seen.set(practice, ids);
    const state = numerator ? 2 : missing ? 1 : 0;
    for (const id of visits) {
      const name = String(id);
      const before = ids.get(name);
      if (before === undefined || before < state) ids.set(name, state);
    }
  }
  const counts = [0, 0, 0];
  for (const ids of seen.values())
    for (const state of ids.values()) counts[state] = (counts[state] ?? 0) + 1;
  const [plain = 0, missing = 0, events = 0] = counts;
  return { units: plain + missing + events, events, known: plain + events, missing };
}
