import { toothNotations } from "@/lib/records/tooth";
import type { Feed } from "../mapping/feed";
import { fieldOf } from "../mapping/field-of";
import type { ColumnProfile } from "../recognise/recognised";
import { columnNames, comparable } from "./column-names";
import type { ColumnsByField } from "./columns-by-name";
import { clockOf, feedOf } from "./propose-feed";

/** So many minutes beside a visit's written times are proposed to count as within it: common practice, clocks differ. */
export const minutesProposed = 10;

/**
 * Feeds by which rows that name no visit find theirs: the time, and chair and tooth where they are there. Undefined where
 * no column holds a moment with its time of day.
 */
export function findingFeeds(
  visit: ColumnsByField,
  columns: readonly ColumnProfile[],
): Record<string, Feed> | undefined {
  const at = columns.find(holdsMoment(columns, columnNames.started_at));
  const field = fieldOf("irrigation", "visit.at");
  if (!at || !field) return undefined;
  const until = columns.find(holdsMoment(columns, columnNames.ended_at));
  const chair = visit.get("chair");
  const tooth = visit.get("tooth");
  return {
    "visit.at": feedOf(field, at, columns),
    ...(until && until !== at ? { "visit.until": feedOf(field, until, columns) } : {}),
    ...(chair ? { "visit.chair": { columns: [chair.name] } } : {}),
    ...(tooth ? { "visit.tooth": { columns: [tooth.name] } } : {}),
    ...notationFeed("visit.tooth_notation", tooth),
  };
}

/** The notation of a column of teeth, where all its cells are teeth in one alone, or its name says which. */
export function notationOf(
  tooth: ColumnProfile,
): { notation: string; why: string } | { why: string } {
  const filled = tooth.cells - tooth.empty;
  const fitting = toothNotations.filter((one) => filled > 0 && tooth.fits.tooth[one] === filled);
  const [only] = fitting;
  if (fitting.length === 1 && only)
    return {
      notation: only,
      why: `Every cell of "${tooth.name}" is a tooth in ${only}, and in no other notation.`,
    };
  const named = fitting.filter((one) => saidBy[one].test(comparable(tooth.name)));
  if (named.length === 1 && named[0])
    return { notation: named[0], why: `The name "${tooth.name}" says it; the cells allow it.` };
  return {
    why:
      fitting.length > 1
        ? `The cells of "${tooth.name}" are teeth in ${fitting.join(" and in ")}: choose the notation.`
        : `Not all cells of "${tooth.name}" are teeth in one notation: choose it.`,
  };
}

/** Feeds the notation where it is settled, and nothing where a person must choose. */
export function notationFeed(
  field: string,
  tooth: ColumnProfile | undefined,
): Record<string, Feed> {
  const found = tooth && notationOf(tooth);
  return found && "notation" in found ? { [field]: { always: found.notation } } : {};
}

const saidBy = { fdi: /\b(fdi|iso)\b/, universal: /\buniversal\b/, palmer: /\bpalmer\b/ };

function holdsMoment(columns: readonly ColumnProfile[], name: RegExp | undefined) {
  return (column: ColumnProfile) => {
    if (!name?.test(comparable(column.name)) || clockOf(column) === undefined) return false;
    if (column.fits.times.some(({ withTimeOfDay }) => withTimeOfDay > 0)) return true;
    const after = columns[columns.indexOf(column) + 1];
    return after !== undefined && (after.fits.timeOfDay24 > 0 || after.fits.timeOfDay12 > 0);
  };
}
