import { matchCells } from "@/lib/intake/mend/match-cells";
import type { Match } from "@/lib/intake/sheet";
import type { BenchRow } from "@/lib/store/mend/bench-rows";
import { writtenCells } from "./held-again";

/**
 * The cells of a held row as they stand now, in the record format, the patient hashed: as the latest mend made them, else as the
 * checks understood them, else as read.
 */
export function heldCells(row: BenchRow): Readonly<Record<string, string>> {
  if (row.mended) return row.mended;
  if (!row.values) return row.raw;
  const { match, ...values } = row.values;
  return {
    ...writtenCells(row.table, values),
    ...(match && typeof match === "object" ? matchCells(match as Match) : {}),
  };
}
