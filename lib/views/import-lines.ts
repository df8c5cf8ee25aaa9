import { moment } from "./day";
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
};

export type CountWords = { readonly [Key in keyof Counts]: string };
export type FileLine = CountWords & {
  readonly id: string;
  readonly name: string;
  readonly table: string;
};
export type ImportLine = {
  readonly id: number;
  readonly by: string;
  readonly at: string;
  readonly state: "running" | "done" | "failed" | "undone";
  readonly stateWords: string;
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
export function importLine(of: ImportInput, zone: string): ImportLine {
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
    stateWords: stateWords(of, zone),
    fileNames: namesOf(of.files.map((file) => file.name)),
    counts: countWords(total),
    files: of.files.map((file, place) => ({
      id: `${place}`,
      name: file.name,
      table: file.tableName,
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
  return state === "done" || state === "failed" || state === "undone" ? state : "running";
}

function stateWords(
  { state, message, finishedAt, rowsRead, files }: ImportInput,
  zone: string,
): string {
  if (state === "reading") {
    const file = files.at(-1)?.name;
    return `Reading${file ? ` ${file}` : ""}.${rowsRead === 0 ? "" : ` ${count(rowsRead)} rows so far.`}`;
  }
  if (state === "publishing")
    return `${count(rowsRead)} rows read. Checking them against each other and the records.`;
  if (state === "failed") return `Nothing was kept. ${message ?? ""}`.trim();
  if (state === "undone") return `Undone${finishedAt ? ` on ${moment(finishedAt, zone)}` : ""}.`;
  return `Done${finishedAt ? ` on ${moment(finishedAt, zone)}` : ""}.`;
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
