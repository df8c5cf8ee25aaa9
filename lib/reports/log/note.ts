import type { NewLogLine } from "@/lib/records/log-line";
import { writeLines } from "@/lib/store/log/write-lines";
import type { Logged } from "@/lib/views/log/logged-pages";
import { aboutOf } from "./about-of";

/** What is seen waits here until it is written, all that has come together at once. */
let waiting: NewLogLine[] = [];
let writing: Promise<void> | undefined;
/** What this process wrote in this hour, so that the same is not asked of the database again. */
let known: { hour: number; keys: Set<string> } = { hour: 0, keys: new Set() };

/**
 * Notes what leaves one line an hour: that something was seen or refused, or is being typed; it costs the page nothing. `writeNoted` writes it, after the answer has gone out.
 *
 * @returns whether there is anything to write
 */
export function noteSeen(line: NewLogLine): boolean {
  const hour = Math.floor(Date.now() / 3_600_000);
  if (known.hour !== hour) known = { hour, keys: new Set() };
  const key = JSON.stringify([line.kind, line.person, line.what, line.about]);
  if (!known.keys.has(key)) {
    known.keys.add(key);
    waiting.push(line);
  }
  return waiting.length > 0;
}

/** Writes what was noted; whoever comes while that is being done is written together next. */
export async function writeNoted(): Promise<void> {
  while (writing) await writing.catch(() => undefined);
  if (waiting.length === 0) return;
  const lines = waiting;
  waiting = [];
  writing = writeLines(lines, true).finally(() => {
    writing = undefined;
  });
  try {
    await writing;
  } catch (error) {
    // Kept for the next attempt: a database that is away for a moment must not lose a line.
    waiting = [...lines, ...waiting];
    throw error;
  }
}

/** Writes that something was done, before the answer tells so. Nothing where the thing leaves no line. */
export async function writeDone(
  logged: Logged,
  line: Omit<NewLogLine, "kind" | "about">,
  about: Parameters<typeof aboutOf>[0],
): Promise<void> {
  if ("none" in logged) return;
  await writeLines([{ ...line, kind: logged.kind, about: aboutOf(about) }]);
}
