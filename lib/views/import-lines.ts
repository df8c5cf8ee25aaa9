import { moment } from "./day";
import { progressWords } from "./import-progress";
import { count } from "./quantity";

/** An import as it is kept. */
export type ImportInput = {
  readonly id: number;
  readonly by: string;
  readonly state: string;
  readonly message: string | null;
  readonly startedAt: Date;
  readonly finishedAt: Date | null;
  readonly rowsRead: number;
  readonly rowsExpected: number | null;
  readonly heldSoFar: number;
  readonly cancel: boolean;
  readonly upload: string | null;
  readonly files: readonly FileInput[];
};
type Counts = {
  readonly read: number;
  readonly accepted: number;
  readonly repeated: number;
  readonly held: number;
  readonly letGo: number;
};
type FileInput = Counts & {
  readonly name: string;
  readonly tableName: string;
  readonly ignored: readonly string[];
  readonly mapping: string | null;
  readonly version: number | null;
};

export type CountWords = { readonly [Key in keyof Counts]: string };
export type FileLine = CountWords & {
  readonly id: string;
  readonly name: string;
  readonly table: string;
  /** The mapping by which it was read, with its version; empty for files in the record format. */
  readonly mapping: string;
};
export type ImportLine = {
  readonly id: number;
  readonly by: string;
  readonly at: string;
  readonly state: "running" | "done" | "failed" | "cancelled" | "undone";
  readonly stateWords: string;
  /** Share read of what is expected, 0 to 1; null where it cannot be told. */
  readonly share: number | null;
  /** It was broken off, and its files are still there to go on with. */
  readonly canGoOn: boolean;
  /** Names of its files in one line. */
  readonly fileNames: string;
  readonly counts: CountWords;
  readonly files: readonly FileLine[];
  /** Columns that no field takes, file by file. */
  readonly notKept: readonly {
    readonly id: string;
    readonly file: string;
    readonly columns: string;
  }[];
  /** What an undo would take away, in a sentence. */
  readonly goes: string;
  readonly hasHeld: boolean;
};

/** An import in words; times in the zone of the reader's practice. */
export function importLine(of: ImportInput, zone: string, now = new Date()): ImportLine {
  const sum = (key: keyof Counts) => of.files.reduce((total, file) => total + file[key], 0);
  const total: Counts = {
    read: sum("read"),
    accepted: sum("accepted"),
    repeated: sum("repeated"),
    held: sum("held"),
    letGo: sum("letGo"),
  };
  return {
    id: of.id,
    by: of.by,
    at: moment(of.startedAt, zone),
    state: stateOf(of.state),
    stateWords: stateWords(of, zone, now),
    share:
      of.state === "reading" && of.rowsExpected ? Math.min(1, of.rowsRead / of.rowsExpected) : null,
    canGoOn: of.state === "failed" && of.upload !== null,
    fileNames: namesOf(of.files.map((file) => file.name)),
    counts: countWords(total),
    files: of.files.map((file, place) => ({
      id: `${place}`,
      name: file.name,
      table: file.tableName,
      mapping: mappingWords(file),
      ...countWords(file),
    })),
    notKept: of.files.flatMap((file, place) =>
      file.ignored.length === 0
        ? []
        : [{ id: `${place}`, file: file.name, columns: file.ignored.join(", ") }],
    ),
    goes: goesWords(total),
    hasHeld: total.held + total.letGo > 0,
  };
}

function stateOf(state: string): ImportLine["state"] {
  return state === "done" || state === "failed" || state === "cancelled" || state === "undone"
    ? state
    : "running";
}

function stateWords(of: ImportInput, zone: string, now: Date): string {
  const { state, message, finishedAt } = of;
  if (stateOf(state) === "running")
    return of.cancel ? "It is being cancelled." : progressWords(of, of.files.at(-1)?.name, now);
  if (state === "cancelled") return "Cancelled; nothing of it was kept.";
  if (state === "failed") return `Nothing was kept. ${message ?? ""}`.trim();
  if (state === "undone") return `Undone${finishedAt ? ` on ${moment(finishedAt, zone)}` : ""}.`;
  return `Done${finishedAt ? ` on ${moment(finishedAt, zone)}` : ""}.`;
}

function mappingWords({ mapping, version }: FileInput): string {
  if (mapping === null) return "";
  return version === null ? mapping : `${mapping}, version ${version}`;
}

function goesWords({ accepted, held, letGo }: Counts): string {
  const rows = (units: number) => `${count(units)} ${units === 1 ? "row" : "rows"}`;
  const kept = held + letGo === 0 ? "" : `, and the ${rows(held + letGo)} it held`;
  return `Up to ${rows(accepted)} that it brought would leave the records and every figure${kept}. A row that another import brought as well stays. It is refused while rows of another import rest on these.`;
}

function countWords(counts: Counts): CountWords {
  return {
    read: count(counts.read),
    accepted: count(counts.accepted),
    repeated: count(counts.repeated),
    held: count(counts.held),
    letGo: count(counts.letGo),
  };
}

function namesOf(names: readonly string[]): string {
  if (names.length === 0) return "no file could be read";
  return names.length <= 3
    ? names.join(", ")
    : `${names.slice(0, 2).join(", ")} and ${count(names.length - 2)} more`;
}
