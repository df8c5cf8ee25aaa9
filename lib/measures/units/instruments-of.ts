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
  const [separated, unknown, used] = [new Set<string>(), new Set<string>(), new Set<string>()];
  for (const [{ practice }, alike] of parts) {
    for (const id of alike.visits) {
      const name = `${practice}\n${id}`;
      used.add(name);
      if (alike.numerator) separated.add(name);
      if (alike.missing) unknown.add(name);
    }
  }
  let missing = 0;
  for (const name of unknown) if (!separated.has(name)) missing += 1;
  return { units: used.size, events: separated.size, known: used.size - missing, missing };
}
