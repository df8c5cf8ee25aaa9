import { byKey } from "./by-key";
import { day } from "./day";
import { count, duration } from "./quantity";
import type { UpkeepRow } from "./upkeep-state";

/** So many recorded durations in a row, equal to the second, are pointed out (the project's own choice). */
export const fewestEqual = 10;
/** So many dates a sentence names; of more, the first and the last. */
const mostDates = 5;

/** What is seen in the log of a task, by chair: shown as what it is, with nothing read into it. */
export type UpkeepSentences = {
  /** Runs of equal durations at a device of a chair. */
  readonly equal: readonly string[];
  /** The task written down as done on days on which the chair was not in use. */
  readonly unused: readonly string[];
};

/**
 * @param rows of one task, by practice, chair and day. A row that was not done, or has no duration, neither counts nor
 * breaks a run.
 */
export function upkeepSentences(rows: readonly UpkeepRow[]): UpkeepSentences {
  const chairs = [...byKey(rows, (row) => `${row.practice}\n${row.chair}`).values()];
  return { equal: chairs.flatMap(equalRuns), unused: chairs.flatMap(unusedDays) };
}

function equalRuns(rows: readonly UpkeepRow[]): string[] {
  const timed = rows.flatMap((row) =>
    row.devices.flatMap(({ device, status, durationS }) =>
      status === "done" && durationS !== null
        ? [{ row, device, seconds: Math.round(durationS) }]
        : [],
    ),
  );
  return [...byKey(timed, ({ device }) => device).values()].flatMap((some) =>
    runsOf(some).flatMap((run) => {
      const [first, last] = [run[0], run.at(-1)];
      if (!first || !last || run.length < fewestEqual) return [];
      const whose = first.device ? `, device ${first.device}` : "";
      return [
        `${chairWords(first.row)}${whose}: ${count(run.length)} records in a row say ${duration(first.seconds)}, from ${day(first.row.day)} to ${day(last.row.day)}.`,
      ];
    }),
  );
}

/** The rows cut wherever the seconds change. */
function runsOf<Timed extends { readonly seconds: number }>(some: readonly Timed[]): Timed[][] {
  const runs: Timed[][] = [];
  for (const one of some) {
    const run = runs.at(-1);
    if (run?.[0]?.seconds === one.seconds) run.push(one);
    else runs.push([one]);
  }
  return runs;
}

function unusedDays(rows: readonly UpkeepRow[]): string[] {
  const found = rows.filter(
    (row) => !row.inUse && row.devices.some(({ status }) => status === "done"),
  );
  const [first] = found;
  if (!first) return [];
  const dates = found.map((row) => day(row.day));
  const when = dates.length > mostDates ? `from ${dates[0]} to ${dates.at(-1)}` : dates.join("; ");
  return [
    `${chairWords(first)}: written down as done on ${count(found.length)} ${found.length === 1 ? "day" : "days"} on which no visit with continuous delivery started there: ${when}.`,
  ];
}

function chairWords({ practice, chair }: UpkeepRow): string {
  return `Chair ${chair} of ${practice}`;
}
