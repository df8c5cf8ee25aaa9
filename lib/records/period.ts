/**
 * A span of local days. `from` is the first day, `until` the day after the last (half-open), both
 * YYYY-MM-DD. `name` is what a person typed or reads: 2026-Q3, 2026-07, 2026, or from..to inclusive.
 */
export type Period = { readonly name: string; readonly from: string; readonly until: string };

/**
 * Days between which a record can lie. Others are slips, and neither YYYY-MM-DD nor PostgreSQL knows the year 0 or
 * one of five digits.
 */
const earliest = "1900-01-01";
const latestUntil = "2200-01-01";

/** Reads a period; undefined where the text names none, or one outside the years of records. */
export function period(text: string): Period | undefined {
  const found = named(text);
  if (!found || found.from < earliest || found.until.length > 10 || found.until > latestUntil)
    return undefined;
  return found;
}

function named(text: string): Period | undefined {
  const quarterParts = /^(\d{4})-Q([1-4])$/i.exec(text);
  if (quarterParts) return quarter(Number(quarterParts[1]), Number(quarterParts[2]));
  const monthParts = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(text);
  if (monthParts) return months(text, Number(monthParts[1]), Number(monthParts[2]), 1);
  if (/^\d{4}$/.test(text)) return months(text, Number(text), 1, 12);
  const span = /^(\d{4}-\d\d-\d\d)\.\.(\d{4}-\d\d-\d\d)$/.exec(text);
  const [, first, last] = span ?? [];
  if (!first || !last || !isDay(first) || !isDay(last) || last < first) return undefined;
  return { name: text, from: first, until: dayAfter(last, 1) };
}

/** The calendar quarter (1–4) of a year. */
export function quarter(year: number, number: number): Period {
  return months(`${year}-Q${number}`, year, number * 3 - 2, 3);
}

/** The quarter that a day lies in. */
export function quarterOf(day: string): Period {
  return quarter(Number(day.slice(0, 4)), Math.ceil(Number(day.slice(5, 7)) / 3));
}

/** The period of the same length in calendar months that lies `steps` before (negative) or after. */
export function shifted(from: Period, steps: number): Period {
  const shape = /^\d{4}-Q[1-4]$/.test(from.name) ? 3 : /^\d{4}-\d\d$/.test(from.name) ? 1 : 12;
  if (from.name.includes("..")) {
    const length = daysBetween(from.from, from.until);
    const first = dayAfter(from.from, steps * length);
    const last = dayAfter(first, length - 1);
    return { name: `${first}..${last}`, from: first, until: dayAfter(last, 1) };
  }
  const index =
    Number(from.from.slice(0, 4)) * 12 + Number(from.from.slice(5, 7)) - 1 + steps * shape;
  const year = Math.floor(index / 12);
  const month = (index % 12) + 1;
  if (shape === 3) return quarter(year, (month + 2) / 3);
  return months(shape === 12 ? `${year}` : `${year}-${two(month)}`, year, month, shape);
}

/** The calendar months that end with the one before `until`, oldest first. */
export function monthsUpTo(until: string, count: number): Period[] {
  const last = period(dayAfter(until, -1).slice(0, 7));
  if (!last) throw new RangeError(`not a day: ${until}`);
  return Array.from({ length: count }, (_, place) => shifted(last, place - count + 1));
}

/** Four quarters that end with the given period's last day: what rates with few units open on. */
export function rollingYear(to: Period): Period {
  const from = shifted(quarterOf(dayAfter(to.until, -1)), -3).from;
  return { name: `${from}..${dayAfter(to.until, -1)}`, from, until: to.until };
}

/** The year that ends with the day before `until`. */
export function yearUntil(until: string): Period {
  const from = `${Number(until.slice(0, 4)) - 1}${until.slice(4)}`.replace("-02-29", "-02-28");
  return { name: `${from}..${dayAfter(until, -1)}`, from, until };
}

export function dayAfter(day: string, days: number): string {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
}

/** A real day of the calendar, YYYY-MM-DD. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

function daysBetween(from: string, until: string): number {
  return Math.round(
    (Date.parse(`${until}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000,
  );
}

function months(name: string, year: number, month: number, count: number): Period {
  const end = year * 12 + month - 1 + count;
  return {
    name,
    from: `${String(year).padStart(4, "0")}-${two(month)}-01`,
    until: `${String(Math.floor(end / 12)).padStart(4, "0")}-${two((end % 12) + 1)}-01`,
  };
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}
