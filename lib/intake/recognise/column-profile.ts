import { canalName } from "@/lib/records/canal-name";
import { isDay } from "@/lib/records/period";
import { toothByIso3950, toothNotations } from "@/lib/records/tooth";
import { isoText, timeOfDay } from "../mapping/clock-text";
import type { Clock } from "../mapping/feed";
import { colonSeconds, isoSeconds } from "../mapping/units";
import type { ColumnProfile } from "./recognised";
import { storable } from "./storable";

/** So many different texts of a column are listed, fewer where there are very many columns; each is shortened to so many characters. */
const wordsOfColumn = 300;
const wordsOfFile = 60_000;
const longestWord = 150;
/** A number, whichever its decimal sign and the mark between its thousands: the notation is told by all columns together. */
const numeral =
  /^[-+]?(?:\d+|\d{1,3}(?:[.,'\u2019 \u00a0\u2009\u202f]\d{3})+)?(?:(?<=\d)[.,]\d*|[.,]\d+)?(?:(?<=\d[.,]?)e[-+]?\d{1,3})?$/i;

const clocks: readonly Clock[] = (
  ["year-month-day", "day-month-year", "month-day-year"] as const
).flatMap((day) => ([24, 12] as const).map((hours) => ({ day, hours })));

/**
 * Gathers what a column holds, cell by cell; memory does not grow with the rows.
 *
 * @param columns so many the file has
 */
export function columnProfile(name: string, columns: number) {
  const wordsKept = Math.min(wordsOfColumn, Math.ceil(wordsOfFile / columns));
  const words = new Map<string, number>();
  const fits = {
    ...{ number: 0, minutesSeconds: 0, hoursMinutesSeconds: 0, isoDuration: 0 },
    ...{ timeOfDay24: 0, timeOfDay12: 0, canal: 0 },
  };
  const tooth = { fdi: 0, universal: 0, palmer: 0 };
  const times = clocks.map((clock) => ({ clock, fits: 0, withTimeOfDay: 0 }));
  const seconds = { "unix-s": 0, "unix-ms": 0 };
  let cells = 0;
  let empty = 0;
  let manyWords = false;
  let before: string | undefined;
  let sameAsBefore = 0;
  const known = new Map<string, (() => void)[]>();

  /** What a text counts under; the same texts come again and again, so that is kept for the first few hundred. */
  function effects(text: string): (() => void)[] {
    const found: (() => void)[] = [];
    if (/\d/.test(text) && numeral.test(text)) found.push(() => fits.number++);
    if (/^1\d{9}$/.test(text)) found.push(() => seconds["unix-s"]++);
    if (/^1\d{12}$/.test(text)) found.push(() => seconds["unix-ms"]++);
    if (text.includes(":")) {
      if (colonSeconds(text, "min:s") !== undefined) found.push(() => fits.minutesSeconds++);
      if (colonSeconds(text, "h:min:s") !== undefined) found.push(() => fits.hoursMinutesSeconds++);
      if (timeOfDay(text, 24)) found.push(() => fits.timeOfDay24++);
      if (timeOfDay(text, 12)) found.push(() => fits.timeOfDay12++);
    }
    if (/^p/i.test(text) && isoSeconds(text) !== undefined) found.push(() => fits.isoDuration++);
    if (canalName(text) !== undefined) found.push(() => fits.canal++);
    for (const notation of toothNotations)
      if (toothByIso3950(text, notation)) found.push(() => tooth[notation]++);
    if (/\d.*\d/.test(text) && text.length >= 6 && text.length < 60)
      for (const time of times) {
        const iso = isoText(text, time.clock);
        if (iso === undefined || !isDay(iso.slice(0, 10))) continue;
        found.push(() => {
          time.fits += 1;
          if (iso.length > 10) time.withTimeOfDay += 1;
        });
      }
    return found;
  }

  return {
    add(cell: string) {
      cells += 1;
      const text = cell.trim();
      if (text === before) sameAsBefore += 1;
      before = text;
      if (text === "") {
        empty += 1;
        return;
      }
      const long = text.length > longestWord;
      const word = long ? text.slice(0, longestWord) : text;
      const count = words.get(word);
      if (count !== undefined) words.set(word, count + 1);
      else if (words.size < wordsKept) words.set(storable(word), 1);
      else manyWords = true;
      if (long) return;
      let counted = known.get(text);
      if (!counted) {
        counted = effects(text);
        if (known.size < wordsKept) known.set(storable(text), counted);
      }
      for (const count of counted) count();
    },
    told(): ColumnProfile {
      const epochs = (["unix-s", "unix-ms"] as const).map((day) => ({
        clock: { day, hours: 24 as const },
        fits: seconds[day],
        withTimeOfDay: seconds[day],
      }));
      return {
        ...{ name, cells, empty, manyWords, sameAsBefore },
        words: [...words]
          .map(([text, count]) => ({ text, count }))
          .sort((one, other) => other.count - one.count),
        fits: {
          ...fits,
          tooth,
          times: [...times, ...epochs].filter((time) => time.fits > 0),
        },
      };
    },
  };
}
