import type { ColumnProfile } from "@/lib/intake/recognise/recognised";
import type { ColumnFacts } from "@/lib/views/mapping/column-facts";

/** What of a column's profile any page may have: counts, and no word of it. */
export function columnFacts({
  name,
  cells,
  empty,
  words,
  manyWords,
  fits,
}: ColumnProfile): ColumnFacts {
  return {
    name,
    filled: cells - empty,
    empty,
    different: manyWords ? null : words.filter(({ text }) => text !== "").length,
    numbers: fits.number,
    minutesSeconds: fits.minutesSeconds,
    hoursMinutesSeconds: fits.hoursMinutesSeconds,
    isoDurations: fits.isoDuration,
    clocks: fits.times.map(({ clock, fits: times }) => ({ clock, fits: times })),
    timesOfDay24: fits.timeOfDay24,
    timesOfDay12: fits.timeOfDay12,
    teeth: fits.tooth,
  };
}
