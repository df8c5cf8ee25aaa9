import { heldKinds } from "./held-kinds";
import { count } from "./quantity";

/** Rows held for one reason: what was found where, how many, and the address that opens them. */
export type BenchGroup = {
  readonly id: string;
  readonly table: string;
  readonly column: string;
  /** "“bleech”", "nothing there", or why the rows are held. */
  readonly what: string;
  readonly rows: string;
  readonly files: string;
  readonly address: string;
};

/** The groups in words, in the order given. */
export function benchGroups(
  groups: readonly {
    readonly table: string;
    readonly kind: string;
    readonly column: string;
    readonly found: string | null;
    readonly rows: number;
    readonly files: number;
  }[],
  importId: number | undefined,
): BenchGroup[] {
  return groups.map(({ table, kind, column, found, rows, files }) => ({
    id: [table, kind, column, found].join("/"),
    table,
    column: column === "" ? "the row as a whole" : column,
    what: foundWords(kind, found),
    rows: count(rows),
    files: `${count(files)} ${files === 1 ? "file" : "files"}`,
    address: `/records/held?${new URLSearchParams([
      ["table", table],
      ["kind", kind],
      ["column", column],
      ...(found === null ? [] : [["found", found]]),
      ...(importId === undefined ? [] : [["import", String(importId)]]),
    ])}`,
  }));
}

/** What was found, or why rows stand in relation to others. */
export function foundWords(kind: string, found: string | null): string {
  if (found === null) return heldKinds[kind] ?? kind;
  return found === "" ? "nothing there" : `“${found}”`;
}
