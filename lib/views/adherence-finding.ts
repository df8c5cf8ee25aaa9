import type { MaskedFigure } from "@/lib/audit/disclosure/masked-figure";
import type { RateFigure } from "@/lib/audit/figure";
import type { Period } from "@/lib/records/period";
import { periodWords } from "./period-words";

/** What a quarter's adherence comes to, in one or two sentences. */
export function adherenceFinding(
  figures: readonly (RateFigure | MaskedFigure)[],
  period: Period,
): string {
  const judged = figures.filter(
    (figure) => figure.inTheseRecords === "reached" || figure.inTheseRecords === "not reached",
  );
  const left = figures.length - judged.length;
  const reached = judged.filter((figure) => figure.inTheseRecords === "reached").length;
  const settled = judged.filter(
    (figure) => figure.beyondChance === "reached" || figure.beyondChance === "missed",
  );
  if (judged.length === 0) return `No criterion can be assessed for ${periodWords(period)}.`;
  const first = `${periodWords(period)}: the target was reached for ${reached} of ${judged.length} ${judged.length === 1 ? "criterion" : "criteria"} in these records`;
  const chance =
    settled.length === judged.length
      ? "each is settled beyond chance"
      : `for ${judged.length - settled.length} of the ${judged.length} this many units do not settle it beyond chance`;
  return `${first}; ${chance}.${left > 0 ? ` ${left} could not be assessed.` : ""}`;
}
