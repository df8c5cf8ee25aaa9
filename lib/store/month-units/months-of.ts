import type { Period } from "@/lib/records/period";

/** The first days of the months that a period is made of; undefined where it begins or ends within one. */
function monthsOf(period: Pick<Period, "from" | "until">): string[] | undefined {
  if (!period.from.endsWith("-01") || !period.until.endsWith("-01")) return undefined;
  const months: string[] = [];
  for (let month = period.from; month < period.until; month = nextMonth(month)) months.push(month);
  return months;
}

/** The first day of the month after. */
export function nextMonth(month: string): string {
  const [year = 0, number = 0] = month.split("-").map(Number);
  return number === 12 ? `${year + 1}-01-01` : `${year}-${String(number + 1).padStart(2, "0")}-01`;
}

/** The months of all the periods, each once; undefined where one of them begins or ends within a month. */
export function monthsOfAll(
  periods: readonly Pick<Period, "from" | "until">[],
): string[] | undefined {
  const spans = periods.map(monthsOf);
  if (spans.some((months) => months === undefined)) return undefined;
  return [...new Set(spans.flatMap((months) => months ?? []))].sort();
}

/** SQL: a local day of the facts `f` lies in the month of `of`. Days with days: beside a moment PostgreSQL takes no index past the wall. */
export function inMonth(of: string): string {
  return `f.local_day >= ${of}.month and f.local_day < (${of}.month + interval '1 month')::date`;
}
