import { dayAfter, type Period, quarterOf, shifted } from "@/lib/records/period";
import { day } from "../day";
import { periodWords } from "../period-words";

/** The quarter that a criterion is tried on, and how it is called. */
export type CountedQuarter = { readonly period: Period; readonly words: string };

/** Records that begin within the first days of a quarter have all of it: practices open after the holidays. */
const openingDays = 7;

/**
 * The last quarter that is recorded from end to end; where there is none, the one of the last recorded day, and up to
 * when it is recorded.
 *
 * @param firstDay first and last recorded day, YYYY-MM-DD
 */
export function countedQuarter(firstDay: string, lastDay: string): CountedQuarter {
  const last = quarterOf(lastDay);
  const whole = [last, shifted(last, -1)].find(
    ({ from, until }) => firstDay < dayAfter(from, openingDays) && dayAfter(lastDay, 1) >= until,
  );
  if (whole) return { period: whole, words: periodWords(whole) };
  const open = dayAfter(lastDay, 1) < last.until;
  const words = `${periodWords(last)}${open ? ` so far, recorded up to ${day(lastDay)}` : ""}`;
  return { period: last, words };
}
