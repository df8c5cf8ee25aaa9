import type { Reason } from "@/lib/records/reason";
import { cellChanges } from "./cell-changes";
import { count } from "./quantity";

/** A held row as it is kept. */
export type HeldInput = {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly importId: number;
  readonly table: string;
  readonly key: string;
  readonly raw: Readonly<Record<string, string>>;
  readonly reasons: readonly Reason[];
  readonly settledBy: string | null;
  readonly settledReason: string | null;
  readonly kind?: string;
  readonly state?: string;
  readonly mendId?: number | null;
  /** Its cells as the latest mend made them. */
  readonly mended?: Readonly<Record<string, string>> | null;
  /** And what they were before it. */
  readonly mendedFrom?: Readonly<Record<string, string>> | null;
};

export type HeldLine = {
  readonly id: string;
  readonly place: string;
  readonly importId: number;
  readonly table: string;
  readonly kind: string;
  readonly key: string;
  readonly reasons: readonly {
    readonly id: string;
    readonly column: string;
    readonly found: string;
    readonly remedy: string;
  }[];
  /** Cells of the row as read, the patient hashed. */
  readonly cells: readonly { readonly column: string; readonly value: string }[];
  /** Who let it go and why, or who mended it; null while it is held. */
  readonly settled: string | null;
  /** What the latest act on the bench changed in it; empty where nothing was. */
  readonly changed: readonly {
    readonly column: string;
    readonly old: string;
    readonly newer: string;
  }[];
};

/** A held row in words a receptionist can act on. */
export function heldLine(row: HeldInput): HeldLine {
  return {
    id: row.id,
    place: `${row.file}, line ${count(row.line)}`,
    importId: row.importId,
    table: row.table,
    kind: row.kind ?? "",
    key: row.key,
    reasons:
      row.state === "mended"
        ? []
        : row.reasons.map((reason, place) => ({
            id: String(place),
            column: reason.column ?? "the row",
            found: reason.found === "" ? "nothing" : `“${reason.found}”`,
            remedy: sentence(reason.remedy),
          })),
    cells: Object.entries(row.raw)
      .filter(([, value]) => value !== "")
      .map(([column, value]) => ({ column, value })),
    settled: settledWords(row),
    changed: row.mended ? cellChanges(row.mendedFrom ?? row.raw, row.mended) : [],
  };
}

function settledWords({ state, settledBy, settledReason, mendId }: HeldInput): string | null {
  if (state === "mended")
    return `Mended by ${settledBy ?? "somebody"} (act ${mendId ?? ""}), and accepted`;
  if (state === "corrected")
    return `Taken in place of the accepted row by ${settledBy ?? "somebody"}`;
  return settledBy === null ? null : `Let go by ${settledBy}: ${settledReason ?? "no reason kept"}`;
}

/** What would be right, as a sentence of its own. */
function sentence(remedy: string): string {
  return remedy === ""
    ? ""
    : `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}${/[.!?]$/.test(remedy) ? "" : "."}`;
}
