import { stringify } from "csv-stringify/sync";
import { csvField } from "./csv-field";
import { stateWords, type UpkeepRow, upkeepState } from "./upkeep-state";

/** The columns of the file, in order. */
export const upkeepColumns = [
  "practice",
  "chair",
  "day",
  "in_use",
  "task",
  "device",
  "status",
  "duration_s",
  "chair_day",
] as const;

/**
 * The calendars of tasks as CSV by RFC 4180: a row for each device of a chair and day; of a day in use without a record,
 * one row without device and status. `chair_day` says what became of the task on the chair and day as a whole. Nobody is named.
 */
export function upkeepCsv(
  tasks: readonly { readonly task: string; readonly rows: readonly UpkeepRow[] }[],
): string {
  const records = tasks.flatMap(({ task, rows }) =>
    rows.flatMap((row) => {
      const shared = [row.practice, row.chair, row.day, row.inUse ? "yes" : "no", task];
      const whole = stateWords(upkeepState(row, task), task);
      const devices = row.devices.length > 0 ? row.devices : [null];
      return devices.map((one) =>
        [...shared, one?.device, one?.status, one?.durationS, whole].map(csvField),
      );
    }),
  );
  return stringify(records, {
    columns: [...upkeepColumns],
    header: true,
    bom: true,
    record_delimiter: "\r\n",
    quoted_match: /[\r\n]/,
  });
}
