import { clopperPearson } from "@/lib/statistics/proportion-interval";

/** A simulated share in per cent with its exact 95 % interval (Clopper & Pearson 1934). */
export function shareWords(hits: number, runs: number, digits = 1): string {
  const ends = clopperPearson(hits, runs, 0.95);
  if (!ends) return "none run";
  const percent = (share: number) => (100 * share).toFixed(digits);
  return `${percent(hits / runs)} (${percent(ends.lower)}–${percent(ends.upper)})`;
}
