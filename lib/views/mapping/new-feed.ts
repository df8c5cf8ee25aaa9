import { type ColumnFacts, clocksOf } from "./column-facts";
import type { ClockDraft, ColumnFeedDraft } from "./draft";
import { type FieldTerms, holdsTime } from "./terms";

/**
 * How a field is read from columns that were just chosen for it: the unit and the order of the day as far as all cells leave no
 * other, and what was said of the same columns before.
 */
export function newFeed(
  field: FieldTerms,
  chosen: readonly string[],
  columns: readonly ColumnFacts[],
  before?: ColumnFeedDraft,
): ColumnFeedDraft {
  const same = before?.columns[0] === chosen[0];
  const facts = chosen.flatMap((name) => columns.find((one) => one.name === name) ?? []);
  const unit = same ? before?.unit : unitOf(field, facts[0]);
  const clock =
    same && before?.clock && chosen.length === before.columns.length
      ? before.clock
      : clockOf(field, facts);
  return {
    columns: chosen,
    ...(same && before?.words ? { words: before.words } : {}),
    ...(unit ? { unit } : {}),
    ...(clock ? { clock } : {}),
  };
}

function unitOf({ units }: FieldTerms, facts: ColumnFacts | undefined): string | undefined {
  if (!facts || facts.filled === 0 || !units.some(({ value }) => value === "s")) return undefined;
  if (facts.minutesSeconds === facts.filled) return "min:s";
  if (facts.hoursMinutesSeconds === facts.filled) return "h:min:s";
  return facts.isoDurations === facts.filled ? "ISO 8601" : undefined;
}

function clockOf(field: FieldTerms, facts: readonly ColumnFacts[]): ClockDraft | undefined {
  const [day, time] = facts;
  if (!holdsTime(field) || !day) return undefined;
  const clocks = clocksOf(day);
  const [first] = clocks;
  if (!first || new Set(clocks.map((one) => one.day)).size > 1) return undefined;
  const halves = time
    ? time.timesOfDay12 > time.timesOfDay24
    : clocks.every((one) => one.hours === 12);
  return { day: first.day, hours: halves ? 12 : 24 };
}
