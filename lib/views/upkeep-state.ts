import { count, duration } from "./quantity";
import { reasonWords } from "./reason-words";

/** The least time a line is to be rinsed, in seconds (common practice, as in the criterion). */
const leastSeconds = 30;

/** The task that has a least time. */
export const lineRinse = "line-rinse";

/** A row of a day's task, one a device; the device is empty where the chair has but one. */
export type UpkeepDeviceRow = {
  readonly device: string;
  readonly status: "done" | "not-done" | "out-of-service";
  /** Seconds; null where it is not recorded. */
  readonly durationS: number | null;
};

/** What became of a task on a chair and day. */
export type UpkeepRow = {
  readonly practice: string;
  readonly chair: string;
  readonly day: string;
  /** The chair's line carried irrigant. */
  readonly inUse: boolean;
  /** False on a day on which the practice did not have the task yet, or no longer. */
  readonly asked?: boolean;
  /** None where there is no record. */
  readonly devices: readonly UpkeepDeviceRow[];
};

export const upkeepStates = [
  "done",
  "short",
  "untimed",
  "not-done",
  "out",
  "none",
  "unused",
  "unasked",
] as const;
export type UpkeepState = (typeof upkeepStates)[number];

/**
 * The state of a chair's day: what is worst of its devices in service, as the criterion looks at them. Out of service
 * where all are; unused where something is written down of a day on which the chair was not in use; unasked where
 * nothing is and the practice did not have the task.
 */
export function upkeepState(row: UpkeepRow, task: string): UpkeepState {
  if (!row.inUse) return "unused";
  if (row.asked === false && row.devices.length === 0) return "unasked";
  if (row.devices.length === 0) return "none";
  const states = row.devices.map((device) => deviceState(device, task));
  const worst = (["not-done", "short", "untimed", "done"] as const).find((one) =>
    states.includes(one),
  );
  return worst ?? "out";
}

/** The same of one device. */
export function deviceState(
  { status, durationS }: UpkeepDeviceRow,
  task: string,
): Exclude<UpkeepState, "none" | "unused" | "unasked"> {
  if (status === "out-of-service") return "out";
  if (status === "not-done") return "not-done";
  if (task !== lineRinse) return "done";
  if (durationS === null) return "untimed";
  return durationS >= leastSeconds ? "done" : "short";
}

/** How a state reads, for a legend or a sum. */
export function stateWords(state: UpkeepState, task: string): string {
  return (task === lineRinse ? rinseWords[state] : undefined) ?? words[state];
}

/** What a day's record says, device by device. */
export function dayWords(row: UpkeepRow, task: string): string {
  if (row.devices.length === 0) return words[row.asked === false ? "unasked" : "none"];
  const said = row.devices.map((one) => {
    const of = deviceWords(one, task);
    return one.device ? `${one.device} ${of}` : of;
  });
  return `${row.inUse ? "" : "not in use; "}${said.join("; ")}`;
}

/** A task in words, by the practices' own words where they have some. */
export function taskWords(task: string, own: ReadonlyMap<string, string>): string {
  const words = own.get(task) ?? reasonWords(task);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** "12 rinsed under 30 s", the states in their order, those that do not occur left out. */
export function stateCounts(rows: readonly UpkeepRow[], task: string): string {
  return upkeepStates
    .flatMap((state) => {
      const days = rows.filter((row) => upkeepState(row, task) === state).length;
      return days === 0 ? [] : [`${count(days)} ${stateWords(state, task)}`];
    })
    .join("; ");
}

function deviceWords(device: UpkeepDeviceRow, task: string): string {
  const state = deviceState(device, task);
  if (device.status !== "done" || device.durationS === null) return stateWords(state, task);
  const done = task === lineRinse ? "rinsed for" : "done in";
  return `${done} ${duration(device.durationS)}${state === "short" ? ", under 30 s" : ""}`;
}

const words: Record<UpkeepState, string> = {
  done: "done",
  short: "done under 30 s",
  untimed: "done, no duration recorded",
  "not-done": "not done",
  out: "out of service",
  none: "no record",
  unused: "recorded, chair not in use",
  unasked: "in use, the task not asked for",
};
const rinseWords: Partial<Record<UpkeepState, string>> = {
  done: "rinsed 30 s or longer",
  short: "rinsed under 30 s",
  untimed: "rinsed, no duration recorded",
  "not-done": "not rinsed",
};
