import { type Period, quarterOf, shifted } from "@/lib/records/period";
import { periodWords } from "./period-words";

/** One period that can be chosen: its name in the address and its words. */
export type PeriodChoice = { readonly name: string; readonly words: string };

/** What the period picker shows. */
export type PeriodChoices = {
  readonly chosen: PeriodChoice;
  readonly previous: PeriodChoice | null;
  readonly next: PeriodChoice | null;
  /** Newest first. */
  readonly all: readonly PeriodChoice[];
};

/**
 * The quarters from the first to the last recorded day, newest first, with the chosen one among them.
 *
 * @param first first recorded day (YYYY-MM-DD), null where there is no record yet
 * @param last last recorded day
 */
export function periodChoices(
  chosen: Period,
  first: string | null,
  last: string | null,
): PeriodChoices {
  const quarters: Period[] = [];
  if (first && last) {
    for (let at = quarterOf(last); at.until > first; at = shifted(at, -1)) quarters.push(at);
  }
  if (!quarters.some((one) => one.name === chosen.name)) quarters.push(chosen);
  quarters.sort((one, other) => other.from.localeCompare(one.from));
  const place = quarters.findIndex((one) => one.name === chosen.name);
  const choice = (one: Period | undefined) => (one ? asChoice(one) : null);
  return {
    chosen: asChoice(chosen),
    previous: choice(quarters[place + 1]),
    next: choice(quarters[place - 1]),
    all: quarters.map(asChoice),
  };
}

function asChoice(of: Period): PeriodChoice {
  return { name: of.name, words: periodWords(of) };
}
