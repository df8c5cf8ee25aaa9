import { alike } from "../mapping/words";
import type { Change, Changes } from "./change";

type Cells = Readonly<Record<string, string>>;

/**
 * The cells of a row once changed, and the columns that a change spoke of; a column set to what it was is one of them, as
 * somebody has looked at it. Empty cells are left out.
 */
export function applyChanges(
  cells: Cells,
  changes: Changes,
): { readonly cells: Cells; readonly spokenOf: ReadonlySet<string> } {
  const made: Record<string, string> = { ...cells };
  const spokenOf = new Set<string>();
  for (const [column, change] of Object.entries(changes)) {
    const before = (cells[column] ?? "").trim();
    const after = changed(before, change);
    if (after === undefined) continue;
    spokenOf.add(column);
    if (after === "") delete made[column];
    else made[column] = after;
  }
  return { cells: made, spokenOf };
}

/** The cell once changed; undefined where the change does not concern it. */
function changed(before: string, change: Change): string | undefined {
  if ("point" in change)
    return /^[-+]?\d+,\d+$/.test(before) ? before.replace(",", ".") : undefined;
  if (change.from !== undefined && alike(change.from) !== alike(before)) return undefined;
  return "none" in change ? "" : change.to.trim();
}
