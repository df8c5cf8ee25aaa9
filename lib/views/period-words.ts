import { dayAfter, type Period, period } from "@/lib/records/period";

const monthNames = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A period as it is read: "July to September 2026", "July 2026", "2026", "3 Jul to 9 Aug 2026". */
export function periodWords(of: Period): string {
  const year = of.from.slice(0, 4);
  if (/^\d{4}$/.test(of.name)) return of.name;
  if (/^\d{4}-\d\d$/.test(of.name)) return `${monthOf(of.from)} ${year}`;
  if (/^\d{4}-Q[1-4]$/.test(of.name)) {
    return `${monthOf(of.from)} to ${monthOf(dayAfter(of.until, -1))} ${year}`;
  }
  const last = dayAfter(of.until, -1);
  return `${day(of.from)} ${year === last.slice(0, 4) ? "" : `${year} `}to ${day(last)} ${last.slice(0, 4)}`;
}

/** A period by its name in an address, as it is read; what names none stays as it is. */
export function periodNameWords(name: string): string {
  const of = period(name);
  return of ? periodWords(of) : name;
}

function monthOf(isoDay: string): string {
  return monthNames[Number(isoDay.slice(5, 7)) - 1] ?? isoDay;
}

function day(isoDay: string): string {
  return `${Number(isoDay.slice(8, 10))} ${monthOf(isoDay).slice(0, 3)}`;
}
