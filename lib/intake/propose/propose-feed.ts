import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import type { Clock, ColumnFeed } from "../mapping/feed";
import type { SourceUnit } from "../mapping/source-units";
import { unitsFor } from "../mapping/units";
import type { ColumnProfile } from "../recognise/recognised";
import { proposedWords, unitInCells } from "./propose-words";
import { unitOfName } from "./unit-names";

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

/** Feeds a field from one column, or a moment from a day and the time of day beside it: words, unit and clock as the contents have them. */
export function feedOf(
  field: Column,
  profile: ColumnProfile,
  columns: readonly ColumnProfile[],
): ColumnFeed {
  const from = [profile.name];
  if (field.type === "instant" || field.type === "day") {
    const clock = clockOf(profile);
    const feed = { columns: from, ...(clock && clock !== "either" ? { clock } : {}) };
    return field.type === "day" ? feed : withTime(feed, profile, columns);
  }
  if (columnTypeHoldsNumber(field.type)) return numberFeed(field, profile);
  const words = proposedWords(field, profile);
  return { columns: from, ...(words.length > 0 ? { words } : {}) };
}

function numberFeed(field: Column, profile: ColumnProfile): ColumnFeed {
  const columns = [profile.name];
  const inCells = unitInCells(field, profile);
  if (inCells)
    return {
      columns,
      words: inCells.words,
      ...(inCells.unit === field.unit ? {} : { unit: inCells.unit }),
    };
  const unit = unitOf(field, profile);
  return { columns, ...(unit && unit !== field.unit ? { unit } : {}) };
}

/** The unit that a column's cells or name tell; undefined where they tell none. */
function unitOf({ unit: own }: Column, profile: ColumnProfile): SourceUnit | undefined {
  const { fits } = profile;
  if (own === "s") {
    if (nearlyAll(fits.isoDuration, profile)) return "ISO 8601";
    if (nearlyAll(fits.hoursMinutesSeconds, profile)) return "h:min:s";
    if (nearlyAll(fits.minutesSeconds, profile)) return "min:s";
  }
  const named = unitOfName(profile.name);
  const written = named === "min:s" || named === "h:min:s";
  return named && !written && own && unitsFor(own).includes(named) ? named : undefined;
}

/** A day in one column may have its time of day in the next. */
function withTime(
  feed: ColumnFeed,
  profile: ColumnProfile,
  columns: readonly ColumnProfile[],
): ColumnFeed {
  if (profile.fits.times.some(({ withTimeOfDay }) => withTimeOfDay > 0)) return feed;
  const after = columns[columns.indexOf(profile) + 1];
  if (!after) return feed;
  const hours = nearlyAll(after.fits.timeOfDay24, after)
    ? 24
    : nearlyAll(after.fits.timeOfDay12, after)
      ? 12
      : undefined;
  if (hours === undefined) return feed;
  return {
    ...feed,
    columns: [profile.name, after.name],
    ...(feed.clock ? { clock: { ...feed.clock, hours } } : {}),
  };
}
