import type { Reason } from "@/lib/records/reason";
import { cellChanges } from "./cell-changes";
import { heldKinds } from "./held-kinds";
import { changeWords } from "./mend-words";
import { count } from "./quantity";

type Cells = Readonly<Record<string, string>>;

/** What a mend did, or would do. */
export type MendInput = {
  readonly rows: number;
  readonly accepted: number;
  readonly repeated: number;
  readonly stillHeld: number;
  readonly joined: number;
  readonly reasons: readonly { kind: string; column: string; remedy: string; rows: number }[];
  readonly examples: readonly {
    readonly id: string;
    readonly file: string;
    readonly line: number;
    readonly key: string;
    readonly before: Cells;
    readonly after: Cells;
    readonly outcome: "accepted" | "repeated" | "held";
    readonly reasons: readonly Reason[];
  }[];
};

export type MendPreview = {
  readonly what: string;
  readonly rows: number;
  /** What would become of the rows, in one sentence. */
  readonly outcome: string;
  /** Why rows would be held still. */
  readonly still: readonly { readonly id: string; readonly words: string }[];
  readonly examples: readonly MendExample[];
};

export type MendExample = {
  readonly id: string;
  readonly place: string;
  readonly key: string;
  readonly changes: readonly {
    readonly column: string;
    readonly old: string;
    readonly newer: string;
  }[];
  readonly outcome: string;
};

/** A mend before it is done, in words. */
export function mendPreview(table: string, changes: unknown, result: MendInput): MendPreview {
  return {
    what: `${table}, ${changeWords(changes)}`,
    rows: result.rows,
    outcome: outcomeSentence(result, "would be"),
    still: result.reasons.map(({ kind, column, remedy, rows }) => ({
      id: `${kind}/${column}`,
      words: `${rowsWords(rows)}: ${column === "" ? "the row" : column}, ${heldKinds[kind] ?? kind}${kind === "check" ? ` (${remedy})` : ""}`,
    })),
    examples: result.examples.map((example) => ({
      id: example.id,
      place: `${example.file}, line ${count(example.line)}`,
      key: example.key,
      changes: cellChanges(example.before, example.after),
      outcome: exampleOutcome(example),
    })),
  };
}

/** "152 rows: 150 would be accepted, 1 repeated, 1 still held." */
export function outcomeSentence(
  { rows, accepted, repeated, stillHeld, joined }: Omit<MendInput, "reasons" | "examples">,
  verb: "would be" | "were",
): string {
  const parts = [
    `${count(accepted)} ${verb} accepted`,
    ...(repeated > 0 ? [`${count(repeated)} repeated (already there, the same)`] : []),
    `${count(stillHeld)} still held`,
  ];
  const others =
    joined > 0
      ? ` ${rowsWords(joined)} that waited for them ${verb === "were" ? "joined" : "would join"} by ${joined === 1 ? "itself" : "themselves"}.`
      : "";
  return `${rowsWords(rows)}: ${parts.join(", ")}.${others}`;
}

function exampleOutcome({ outcome, reasons }: MendInput["examples"][number]): string {
  if (outcome === "accepted") return "accepted";
  if (outcome === "repeated") return "repeated: already there, the same";
  const [reason] = reasons;
  return reason ? `still held: ${reason.column ?? "the row"}, ${reason.remedy}` : "still held";
}

function rowsWords(rows: number): string {
  return `${count(rows)} ${rows === 1 ? "row" : "rows"}`;
}
