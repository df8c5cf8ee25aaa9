import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import type { Clock, ColumnFeed } from "../mapping/feed";
import type { SourceUnit } from "../mapping/source-units";
import type { ColumnProfile } from "../recognise/recognised";
import { proposedWords } from "./propose-words";

/** Nearly all of a column's cells, so that a few wrong ones do not hide what it is. */
export const nearlyAll = (fits: number, { cells, empty }: ColumnProfile) =>
  cells > empty && fits >= 0.95 * (cells - empty);

/** The clock that a column's days and moments are written by; "either" where two orders of the day fit all of them. */
export function clockOf(profile: ColumnProfile): Clock | "either" | undefined {
  const fitting = profile.fits.times.filter(({ fits }) => nearlyAll(fits, profile));
  const most = Math.max(0, ...fitting.map(({ fits }) => fits));
  const best = fitting.filter(({ fits }) => fits === most);
  const orders = new Set(best.map(({ clock }) => clock.day));
  if (orders.size > 1) return "either";
  return best.find(({ clock }) => clock.hours === 24)?.clock ?? best[0]?.clock;
}

/** Feeds a field from one column: its words, unit and clock as its contents have them. */
export function feedOf(field: Column, profile: ColumnProfile): ColumnFeed {
  const columns = [profile.name];
  if (field.type === "instant" || field.type === "day") {
    const clock = clockOf(profile);
    return { columns, ...(clock && clock !== "either" ? { clock } : {}) };
  }
  if (columnTypeHoldsNumber(field.type)) {
    const unit = unitOf(field, profile);
    return { columns, ...(unit && unit !== field.unit ? { unit } : {}) };
  }
  const words =
    field.type === "choice" || field.type === "flag" ? proposedWords(field, profile) : [];
  return { columns, ...(words.length > 0 ? { words } : {}) };
}

/** The unit that a column's name or cells tell; undefined where they tell none. */
function unitOf({ unit }: Column, profile: ColumnProfile): SourceUnit | undefined {
  const name = profile.name.toLowerCase().replace("µ", "u").replace("³", "3");
  const { fits } = profile;
  if (unit === "s") {
    if (nearlyAll(fits.isoDuration, profile)) return "ISO 8601";
    if (nearlyAll(fits.hoursMinutesSeconds, profile)) return "h:min:s";
    if (nearlyAll(fits.minutesSeconds, profile)) return "min:s";
    return /\bmin\b/.test(name) ? "min" : undefined;
  }
  if (unit === "mL")
    return /\b(cm3|cc)\b/.test(name) ? "cm3" : /\bul\b/.test(name) ? "uL" : undefined;
  if (unit === "mL/min") return /(ml|cm3|cc)\s*\/\s*s\b/.test(name) ? "mL/s" : undefined;
  if (unit === "mm") return /\bcm\b/.test(name) ? "cm" : undefined;
  return undefined;
}
