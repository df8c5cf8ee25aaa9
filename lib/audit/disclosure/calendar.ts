import { type Period, period, shifted } from "@/lib/records/period";

/** Is it a month, quarter or year of the calendar: of two such one holds the other, or they have no day in common. */
export function isOfCalendar({ name }: Period): boolean {
  return !name.includes("..");
}

/** Every period that an export can be of, which has a day in common with this one: its year, with quarters and months. A span of days stands alone. */
export function periodsAround(of: Period): Period[] {
  if (!isOfCalendar(of)) return [of];
  const year = period(of.from.slice(0, 4));
  const [quarter, month] = ["-Q1", "-01"].map((part) => period(`${year?.name}${part}`));
  if (!year || !quarter || !month) return [of];
  const times = (first: Period, count: number) =>
    Array.from({ length: count }, (_, place) => shifted(first, place));
  return [year, ...times(quarter, 4), ...times(month, 12)];
}

/** Does the first hold every day of the other. */
export function holds(one: Period, other: Period): boolean {
  return one.from <= other.from && other.until <= one.until;
}

/** Those that hold no other one. */
export function shortest(periods: readonly Period[]): Period[] {
  return periods.filter((one) => !periods.some((other) => other !== one && holds(one, other)));
}
