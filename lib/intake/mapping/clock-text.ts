import type { Clock } from "./feed";
import { monthNamed } from "./month-names";

const offset = String.raw`\s*(Z|[+-]\d\d:?\d\d|[+-]\d\d)?`;
const ofDay = new RegExp(
  String.raw`^(\d{1,2})[:.h](\d\d)(?:[:.](\d\d)(?:[.,]\d{1,9})?)?\s*([ap]\.?\s?m\.?)?${offset}$`,
  "i",
);
const word = String.raw`[\p{L}]+\.?`;
const dayShape = new RegExp(
  String.raw`^(\d{1,4}|${word})(?:\s*[./-]\s*|,?\s+)(\d{1,2}|${word})(?:\s*[./-]\s*|,?\s+)(\d{1,4})(?:[T,]?\s*(?=\d)(.*))?$`,
  "u",
);
const compact = /^(\d{4})(\d\d)(\d\d)(?:[T ]?(\d.*))?$/;

/**
 * A moment or day, written in the order of a clock, as ISO 8601: with its offset where it has one, else local, and a day alone
 * where there is no time of day. Two digits of a year are of this century. Undefined where it is not written so; whether
 * the day exists is for the checks to say.
 */
export function isoText(text: string, clock: Clock): string | undefined {
  if (clock.day === "unix-s" || clock.day === "unix-ms") return ofSeconds(text, clock.day);
  const parts = (clock.day === "year-month-day" ? compact.exec(text) : null) ?? dayShape.exec(text);
  if (!parts) return undefined;
  const [first = "", second = "", third = "", rest = ""] = parts.slice(1);
  const day = isoDay([first, second, third], clock.day);
  if (day === undefined) return undefined;
  if (rest === "") return day;
  const time = timeOfDay(rest, clock.hours);
  return time === undefined ? undefined : `${day}T${time}`;
}

/** A time of day as hh:mm:ss with its offset, if any. */
export function timeOfDay(text: string, hours: Clock["hours"]): string | undefined {
  const parts = ofDay.exec(text.trim());
  if (!parts) return undefined;
  const [hour = "", minute = "", second = "00", half, zone = ""] = parts.slice(1);
  if ((half === undefined) !== (hours === 24)) return undefined;
  const written = Number(hour);
  if (hours === 12 && (written < 1 || written > 12)) return undefined;
  const real = half === undefined ? written : (written % 12) + (/^p/i.test(half) ? 12 : 0);
  if (real > 23 || Number(minute) > 59 || Number(second) > 59) return undefined;
  return `${two(real)}:${minute}:${second}${zone.toUpperCase()}`;
}

function isoDay(parts: readonly [string, string, string], order: Clock["day"]): string | undefined {
  const [first, second, third] = parts;
  const [year, month, day] =
    order === "year-month-day"
      ? [first, second, third]
      : order === "day-month-year"
        ? [third, second, first]
        : [third, first, second];
  if (!/^(\d{2}|\d{4})$/.test(year) || !/^\d{1,2}$/.test(day)) return undefined;
  const monthNumber = /^\d{1,2}$/.test(month) ? Number(month) : monthNamed(month);
  if (monthNumber === undefined || monthNumber < 1 || monthNumber > 12) return undefined;
  if (Number(day) < 1 || Number(day) > 31) return undefined;
  return `${year.length === 2 ? `20${year}` : year}-${two(monthNumber)}-${two(Number(day))}`;
}

function ofSeconds(text: string, unit: "unix-s" | "unix-ms"): string | undefined {
  if (!/^\d{1,15}(\.\d+)?$/.test(text)) return undefined;
  const at = new Date(Number(text) * (unit === "unix-s" ? 1000 : 1));
  return Number.isNaN(at.getTime()) ? undefined : at.toISOString();
}

const two = (value: number) => String(value).padStart(2, "0");
