import type { Changes } from "@/lib/intake/mend/change";
import { mendedRow } from "@/lib/intake/mend/mended-row";
import { heldCells } from "@/lib/reports/held-cells";
import type { Remake } from "@/lib/store/mend/mending";
import { context } from "./messy-rows";

/** Held rows made anew with changes, as the bench does it. */
export function remake(changes: Changes): Remake {
  return (row) => {
    const before = heldCells(row);
    const made = mendedRow(
      { ...row, place: row, cells: before, byChecks: row.kind === "check" },
      changes,
      context,
    );
    return made && { before, ...made };
  };
}
