import { dayAfter } from "@/lib/records/period";

/** The first day that has begun nowhere yet, YYYY-MM-DD: calendars say of it, and of later ones, that they are to come. */
export function tomorrow(now = new Date()): string {
  // In the zone furthest east the day begins 14 hours before it does in UTC.
  return dayAfter(new Date(now.getTime() + 14 * 3_600_000).toISOString().slice(0, 10), 1);
}
