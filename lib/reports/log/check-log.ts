import { createHash } from "node:crypto";
import type { PeopleReach } from "@/lib/access/reach";
import { cutThrough, hashedText, type LogLine, noHash } from "@/lib/records/log-line";
import { everyLine } from "@/lib/store/log/read-lines";

/** What checking the whole log found. The head is to be noted down elsewhere: a log made anew does not hold it. */
export type LogChecked = {
  readonly lines: number;
  /** Number and hash of the last line; null where there is none. */
  readonly head: { readonly id: number; readonly hash: string } | null;
  /** The first break, in words; null where the chain holds. */
  readonly broken: string | null;
};

/**
 * Checks the chain from its first line to its last: that each line's hash is that of what it says, that it follows the line before, that
 * none is missing, and that a log which does not begin at line 1 holds the line about the cut.
 *
 * @param noted a head that was noted down earlier: it must still be there
 */
export async function checkLog(
  reach: PeopleReach,
  noted?: { readonly id: number; readonly hash: string },
): Promise<LogChecked> {
  let before: LogLine | null = null;
  let first: LogLine | null = null;
  let lines = 0;
  let cutIsTold = false;
  let notedIs: string | null = null;
  for await (const batch of everyLine(reach)) {
    for (const line of batch) {
      const broken = breakAt(line, before);
      if (broken) return { lines, head: headOf(before), broken };
      first ??= line;
      const needed = cutThrough(first.id - 1, first.prev);
      if (line.kind === "cut" && line.about.startsWith(needed)) cutIsTold = true;
      if (line.id === noted?.id) notedIs = line.hash;
      before = line;
      lines += 1;
    }
  }
  const broken =
    beginning(first, cutIsTold) ?? (noted ? notedBreak(noted, notedIs, first, before) : null);
  return { lines, head: headOf(before), broken };
}

function headOf(line: LogLine | null) {
  return line && { id: line.id, hash: line.hash };
}

function breakAt(line: LogLine, before: LogLine | null): string | null {
  const at = `Line ${line.id} (${line.at})`;
  if (before && line.id !== before.id + 1)
    return before.id + 2 === line.id
      ? `Line ${before.id + 1} is missing.`
      : `Lines ${before.id + 1} to ${line.id - 1} are missing.`;
  if (before && line.prev !== before.hash) return `${at} does not follow line ${before.id}.`;
  const hash = createHash("sha256").update(hashedText(line)).digest("hex");
  return hash === line.hash ? null : `${at} does not say what was written: its hash is another.`;
}

function beginning(first: LogLine | null, cutIsTold: boolean): string | null {
  if (!first || cutIsTold || (first.id === 1 && first.prev === noHash)) return null;
  return first.id === 1
    ? "Line 1 follows something, and nothing is before it."
    : `The log begins at line ${first.id}, and no line tells of a cut before it.`;
}

function notedBreak(
  noted: { readonly id: number; readonly hash: string },
  found: string | null,
  first: LogLine | null,
  last: LogLine | null,
): string | null {
  if (found === noted.hash) return null;
  if (found) return `Line ${noted.id} is not the one that was noted down: the log was made anew.`;
  // A line that a cut took cannot be compared; that the cut is told was checked.
  if (first && noted.id < first.id) return null;
  return `The log ends at line ${last?.id ?? 0}, before line ${noted.id} that was noted down: its end was cut off.`;
}
