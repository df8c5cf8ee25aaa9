import { dayAfter } from "@/lib/records/period";
import type { Practice } from "./scenario";

/** The days on which the practices are open, both ends included: weekdays, and not from 24 December to 1 January. */
export function openDays(first: string, last: string): string[] {
  const days: string[] = [];
  for (let day = first; day <= last; day = dayAfter(day, 1)) {
    if (weekday(day) < 5 && !(day.slice(5) >= "12-24" || day.slice(5) === "01-01")) days.push(day);
  }
  return days;
}

/** 0 is Monday. */
export function weekday(day: string): number {
  return (new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7;
}

/** The time as the practice's own system writes it, `minutes` after local midnight. */
export function writtenTime(practice: Practice, day: string, minutes: number): string {
  const local = `${day}T${clock(minutes * 60)}`;
  return practice.times === "local" ? local : `${local}+0${offset(practice, day)}:00`;
}

/** The time as a motor's log writes it, in UTC, `seconds` after local midnight. */
export function loggedTime(practice: Practice, day: string, seconds: number): string {
  return `${day}T${clock(seconds - offset(practice, day) * 3600)}Z`;
}

/** Hours ahead of UTC in the working hours of a day; summer time from the last Sunday of March to that of October. */
function offset(practice: Practice, day: string): number {
  const year = day.slice(0, 4);
  const summer = day >= lastSunday(`${year}-03-31`) && day < lastSunday(`${year}-10-31`);
  return (practice.zone === "Europe/London" ? 0 : 1) + (summer ? 1 : 0);
}

function lastSunday(monthEnd: string): string {
  return dayAfter(monthEnd, -((weekday(monthEnd) + 1) % 7));
}

function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  return [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60]
    .map((part) => String(part).padStart(2, "0"))
    .join(":");
}
