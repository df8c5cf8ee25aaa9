import { Temporal } from "@js-temporal/polyfill";

/** Rows of one visit and canal stand close to each other, so the latest groups are enough and memory stays bounded. */
const groupsKept = 20_000;

/** Numbers the rows of each group from 1, in the order in which they come. */
export function runningNumber(): (group: string) => number {
  const reached = latest<number>();
  return (group) => {
    const next = (reached.take(group) ?? 0) + 1;
    reached.put(group, next);
    return next;
  };
}

/**
 * Numbers rows by their time of day in a zone, as 92005 for 09:20:05, and by the next free number where the group has that one. A row
 * that comes again in a log that overlaps the last one has the same number again, wherever the log begins.
 */
export function numberByTime(): (group: string, at: string, zone: string) => number {
  const used = latest<Set<number>>();
  const offsets = latest<number>();
  return (group, at, zone) => {
    const hour = `${zone} ${at.slice(0, 13)}`;
    const offset = offsets.take(hour) ?? offsetAt(at, zone);
    offsets.put(hour, offset);
    const local = new Date(Date.parse(at) + offset).toISOString();
    const name = `${group}|${local.slice(0, 10)}`;
    const taken = used.take(name) ?? new Set();
    let number = Number(local.slice(11, 19).replaceAll(":", ""));
    while (taken.has(number)) number += 1;
    used.put(name, taken.add(number));
    return number;
  };
}

function offsetAt(at: string, zone: string): number {
  return Temporal.Instant.from(at).toZonedDateTimeISO(zone).offsetNanoseconds / 1e6;
}

/** A map that keeps what was put last. */
function latest<Value>() {
  const kept = new Map<string, Value>();
  return {
    /** The value, which is forgotten until it is put again. */
    take(key: string): Value | undefined {
      const value = kept.get(key);
      kept.delete(key);
      return value;
    },
    put(key: string, value: Value) {
      kept.set(key, value);
      if (kept.size <= groupsKept) return;
      const [oldest] = kept.keys();
      if (oldest !== undefined) kept.delete(oldest);
    },
  };
}
