import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import type { Problem } from "../problem";
import { isoText } from "./clock-text";
import type { ColumnFeed } from "./feed";
import { type Notation, numberReader } from "./numbers";
import type { SourceUnit } from "./source-units";
import { colonSeconds, converted, isoSeconds } from "./units";
import { wordReader } from "./words";

/** What a feed finds in a row: the cell in the record format, or why it cannot be read so; `nothing`: a word says it is not recorded. */
export type FieldRead = {
  readonly text?: string;
  readonly trouble?: Problem;
  readonly nothing?: true;
  readonly also?: Readonly<Record<string, string>>;
};
export type Cells = Readonly<Record<string, string>>;

/** Reads one field of a row, from the file's columns to a cell as the record format writes it. */
export function fieldReader(
  field: Column,
  feed: ColumnFeed,
  columns: readonly string[],
  notation: Notation,
): (cells: Cells) => FieldRead {
  const wordOf = feed.words ? wordReader(feed.words, notation) : undefined;
  const value = valueReader(field, feed, notation);
  const [first = "", ...others] = columns;
  return (cells) => {
    let text = cells[first] ?? "";
    for (const name of others) text = `${text} ${cells[name] ?? ""}`;
    text = text.trim();
    const word = wordOf?.(text);
    if (word) {
      if (word.means === null) return { nothing: true, also: word.also };
      return { ...unitOf(field, feed, word.means), also: word.also };
    }
    return text === "" ? {} : value(text);
  };
}

function valueReader(
  field: Column,
  { unit, clock }: ColumnFeed,
  notation: Notation,
): (text: string) => FieldRead {
  if (field.type === "instant" || field.type === "day") {
    if (!clock) return (text) => ({ text });
    return (text) => {
      const iso = isoText(text, clock);
      if (iso === undefined || (field.type === "instant" && iso.length === 10))
        return { text, trouble: { found: text, remedy: clockWords(field, clock) } };
      return { text: field.type === "day" ? iso.slice(0, 10) : iso };
    };
  }
  if (!columnTypeHoldsNumber(field.type)) return (text) => ({ text });
  const plainNumber = numberReader(notation);
  return (text) => {
    const seconds = unit && ofLength(text, unit);
    if (seconds !== undefined) return inOwnUnit(field, text, seconds, "s");
    const number = plainNumber(text);
    if (unit === "min:s" || unit === "h:min:s" || unit === "ISO 8601")
      return { text, trouble: { found: text, remedy: lengthWords[unit] } };
    // A word, as yes in a count, is for the checks.
    if (number === undefined) return numberTrouble(text, notation);
    return unit ? inOwnUnit(field, text, Number(number), unit) : { text: number };
  };
}

/** The number within a word's meaning may have a unit, too. */
function unitOf(field: Column, { unit }: ColumnFeed, means: string): FieldRead {
  if (!unit || means === "" || Number.isNaN(Number(means))) return { text: means };
  return inOwnUnit(field, means, Number(means), unit);
}

function ofLength(text: string, unit: SourceUnit): number | undefined {
  if (unit === "min:s" || unit === "h:min:s") return colonSeconds(text, unit);
  return unit === "ISO 8601" ? isoSeconds(text) : undefined;
}

function inOwnUnit(field: Column, text: string, value: number, unit: SourceUnit): FieldRead {
  const own = field.unit;
  const made = own === undefined ? undefined : converted(value, unit, own);
  if (made === undefined)
    return {
      text,
      trouble: {
        found: text,
        remedy: `${unit} cannot be converted into ${own ?? "this field"}; correct the unit in the mapping`,
      },
    };
  return { text: String(made) };
}

function numberTrouble(text: string, { decimal, thousands }: Notation): FieldRead {
  if (!/\d/.test(text)) return { text };
  const groups = thousands === "" ? "" : ` and "${thousands}" between thousands`;
  return {
    text,
    trouble: {
      found: text,
      remedy: `the mapping reads numbers with "${decimal}"${groups}; correct the cell, or say in the mapping what this word means`,
    },
  };
}

const lengthWords = {
  "min:s": "the mapping reads minutes and seconds here, as 2:45",
  "h:min:s": "the mapping reads hours, minutes and seconds here, as 0:02:45",
  "ISO 8601": "the mapping reads ISO 8601 durations here, as PT2M45S",
};

function clockWords(field: Column, clock: NonNullable<ColumnFeed["clock"]>): string {
  const day = {
    "year-month-day": "2026-07-03",
    "day-month-year": "03.07.2026 (day first)",
    "month-day-year": "07/03/2026 (month first)",
    "unix-s": "seconds since 1970",
    "unix-ms": "milliseconds since 1970",
  }[clock.day];
  if (field.type === "day" || clock.day.startsWith("unix")) return `the mapping reads ${day} here`;
  return `the mapping reads ${day} with the time of day as ${clock.hours === 12 ? "9:10 AM" : "09:10"} here`;
}
