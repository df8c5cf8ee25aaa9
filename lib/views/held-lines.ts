import type { Reason } from "@/lib/records/reason";
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
};

export type HeldLine = {
  readonly id: string;
  readonly place: string;
  readonly importId: number;
  readonly table: string;
  readonly key: string;
  readonly reasons: readonly {
    readonly id: string;
    readonly column: string;
    readonly found: string;
    readonly remedy: string;
  }[];
  /** Cells of the row as read, the patient hashed. */
  readonly cells: readonly { readonly column: string; readonly value: string }[];
  /** Who let it go and why; null while it is held. */
  readonly settled: string | null;
};

/** Rows held for the same reason: how many, and the address that shows them. */
export type HeldGroup = {
  readonly id: string;
  readonly table: string;
  readonly why: string;
  readonly column: string;
  readonly rows: string;
  readonly address: string;
};

/** A held row in words a receptionist can act on. */
export function heldLine(row: HeldInput): HeldLine {
  return {
    id: row.id,
    place: `${row.file}, line ${count(row.line)}`,
    importId: row.importId,
    table: row.table,
    key: row.key,
    reasons: row.reasons.map((reason, place) => ({
      id: String(place),
      column: reason.column ?? "the row",
      found: reason.found === "" ? "nothing" : `“${reason.found}”`,
      remedy: sentence(reason.remedy),
    })),
    cells: Object.entries(row.raw)
      .filter(([, value]) => value !== "")
      .map(([column, value]) => ({ column, value })),
    settled:
      row.settledBy === null
        ? null
        : `Let go by ${row.settledBy}: ${row.settledReason ?? "no reason kept"}`,
  };
}

/** The groups of held rows, the largest first. */
export function heldGroups(
  groups: readonly { table: string; kind: string; column: string; count: number }[],
  state: "held" | "let-go",
): HeldGroup[] {
  return groups.map((group) => ({
    id: [group.table, group.kind, group.column].join("/"),
    table: group.table,
    why: kinds[group.kind] ?? group.kind,
    column: group.column === "" ? "the row as a whole" : group.column,
    rows: count(group.count),
    address: `/records/held?${new URLSearchParams({
      table: group.table,
      kind: group.kind,
      column: group.column,
      ...(state === "let-go" ? { state } : {}),
    })}`,
  }));
}

/** What would be right, as a sentence of its own. */
function sentence(remedy: string): string {
  return remedy === ""
    ? ""
    : `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}${/[.!?]$/.test(remedy) ? "" : "."}`;
}

const kinds: Record<string, string> = {
  check: "a value is missing or cannot be right",
  waiting: "what it belongs to is not there yet",
  contradiction: "contradicts an accepted row",
  "several-practices": "two practices know the visit",
  "several-visits": "more than one visit was there at that time",
  "outside-reach": "of a practice that is not the sender's",
  "after-separation": "used after the instrument separated",
};
