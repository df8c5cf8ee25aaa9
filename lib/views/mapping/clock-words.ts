import type { ClockDraft } from "./draft";
import type { Choice } from "./terms";

/** The orders of the day to choose from. */
export const clockChoices: readonly Choice[] = [
  { value: "year-month-day 24", words: "year, month, day: 2026-07-03" },
  { value: "day-month-year 24", words: "day first: 03.07.2026 is 3 July" },
  { value: "month-day-year 24", words: "month first: 07/03/2026 is 3 July" },
  { value: "year-month-day 12", words: "year, month, day, with AM or PM" },
  { value: "day-month-year 12", words: "day first, with AM or PM" },
  { value: "month-day-year 12", words: "month first, with AM or PM" },
  { value: "unix-s 24", words: "seconds since 1970" },
  { value: "unix-ms 24", words: "milliseconds since 1970" },
];

export function clockValue(clock: ClockDraft | undefined): string {
  return clock ? `${clock.day} ${clock.hours}` : "";
}

export function clockOf(value: string): ClockDraft | undefined {
  const [day, hours] = value.split(" ");
  return day ? { day, hours: Number(hours) } : undefined;
}
