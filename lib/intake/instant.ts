import { Temporal } from "@js-temporal/polyfill";
import { isDay } from "@/lib/records/period";
import type { Problem } from "./problem";

const shape =
  /^(\d{4}-\d\d-\d\d)[T ]([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d)(?:\.(\d{1,9}))?)?(Z|[+-](?:0\d|1[0-4])(?::?[0-5]\d)?)?$/i;
const howToWrite =
  "write date and time as 2026-07-03T09:10:00+01:00, or without +01:00 for the practice's local time";

/** What a moment is read beside. */
export type When = {
  /** IANA zone of the row's practice, asked for only by times without an offset. */
  zone(): string | undefined;
  readonly now: Date;
};

/**
 * A moment by ISO 8601 as ISO text in UTC. Without an offset it is local time in the zone: one that does not exist there,
 * or exists twice, as in the nights when clocks change, is a problem and never guessed.
 */
export function instant(text: string, when: When): string | Problem {
  const parts = shape.exec(text);
  if (!parts?.[1] || !isRealDay(parts[1])) return { found: text, remedy: howToWrite };
  const offset = parts[6];
  const moment = offset ? withOffset(text, parts) : local(text, parts, when.zone());
  if (typeof moment !== "number") return moment;
  if (moment > when.now.getTime())
    return { found: text, remedy: "the time is still to come; correct it" };
  if (moment < earliest)
    return { found: text, remedy: "the time is before 1990; is the year right?" };
  return new Date(moment).toISOString();
}

const earliest = Date.UTC(1990, 0, 1);

function withOffset(
  text: string,
  [, day, hours, minutes, seconds = "00", fraction = "0", offset = "Z"]: RegExpExecArray,
): number | Problem {
  const zone =
    offset.toUpperCase() === "Z"
      ? "Z"
      : `${offset.slice(0, 3)}:${offset.slice(3).replace(":", "") || "00"}`;
  const moment = Date.parse(`${day}T${hours}:${minutes}:${seconds}.${fraction.slice(0, 3)}${zone}`);
  return Number.isNaN(moment) ? { found: text, remedy: howToWrite } : moment;
}

function local(
  text: string,
  [, day, hours, minutes, seconds = "00", fraction = "0"]: RegExpExecArray,
  zone: string | undefined,
): number | Problem {
  if (!zone)
    return {
      found: text,
      remedy:
        "the practices have different time zones; write the offset from UTC, as +01:00, or the practice",
    };
  const wall = Date.parse(`${day}T${hours}:${minutes}:${seconds}.${fraction.slice(0, 3)}Z`);
  const settled = offsetOnPlainDay(day ?? "", zone);
  if (settled !== undefined) return wall - settled;
  const time = Temporal.PlainDateTime.from(`${day}T${hours}:${minutes}:${seconds}`);
  const [earlier, later] = (["earlier", "later"] as const).map((which) =>
    time.toZonedDateTime(zone, { disambiguation: which }),
  );
  if (!earlier || !later) return { found: text, remedy: howToWrite };
  if (earlier.epochMilliseconds === later.epochMilliseconds)
    return earlier.epochMilliseconds + (wall % 1000);
  if (!earlier.toPlainDateTime().equals(time)) {
    return {
      found: text,
      remedy: `that time did not exist in ${zone}, as clocks went forward; correct it or write the offset`,
    };
  }
  return {
    found: text,
    remedy: `that time came twice in ${zone}, as clocks went back; write the offset, ${earlier.offset} or ${later.offset}`,
  };
}

let lastDay = "";

/** Rows come mostly in the order of their days, so the day that was right last is not asked again. */
function isRealDay(day: string): boolean {
  if (day === lastDay) return true;
  if (!isDay(day)) return false;
  lastDay = day;
  return true;
}

const offsets = new Map<string, number | undefined>();

/** The offset in milliseconds where it is the same all that day and the days beside it, else undefined. Kept, as Temporal is slow. */
function offsetOnPlainDay(day: string, zone: string): number | undefined {
  const key = `${zone} ${day}`;
  if (offsets.has(key)) return offsets.get(key);
  const start = Temporal.PlainDate.from(day).toZonedDateTime(zone);
  const before = start.subtract({ days: 1 }).offsetNanoseconds;
  const same =
    before === start.offsetNanoseconds && before === start.add({ days: 2 }).offsetNanoseconds;
  if (offsets.size > 20_000) offsets.clear();
  const offset = same ? before / 1e6 : undefined;
  offsets.set(key, offset);
  return offset;
}
