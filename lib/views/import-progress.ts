import { count, duration } from "./quantity";

export type Progress = {
  readonly state: string;
  readonly startedAt: Date;
  readonly rowsRead: number;
  readonly rowsExpected: number | null;
  readonly heldSoFar: number;
};

/** How far a running import has come: rows, rate, time left and what is held so far, as far as each can be told. */
export function progressWords(of: Progress, file: string | undefined, now: Date): string {
  const { rowsRead, rowsExpected, heldSoFar } = of;
  const held = heldSoFar > 0 ? ` ${count(heldSoFar)} held so far.` : "";
  if (of.state === "publishing")
    return `${count(rowsRead)} rows read. Checking them against each other and the records.${held}`;
  const reading = `Reading${file ? ` ${file}` : ""}.`;
  if (rowsRead === 0) return reading;
  const seconds = Math.max(1, now.getTime() - of.startedAt.getTime()) / 1000;
  const rate = rowsRead / seconds;
  const of_ = rowsExpected ? ` of about ${count(Math.max(rowsExpected, rowsRead))}` : "";
  const left = rowsExpected
    ? `, about ${duration(Math.ceil(Math.max(0, rowsExpected - rowsRead) / rate))} of reading left`
    : "";
  return `${reading} ${count(rowsRead)}${of_} rows, ${count(Math.round(rate))} a second${left}.${held}`;
}
