import type { Value } from "@/lib/records/column";
import { type ToothNotation, toothByIso3950, toothNotations } from "@/lib/records/tooth";
import type { Problem } from "./problem";

/** A tooth as its two digits by ISO 3950, read in the notation of its row, which is never guessed. */
export function checkTooth(text: string, cells: Readonly<Record<string, string>>): Value | Problem {
  const written = (cells.tooth_notation ?? "").trim().toLowerCase();
  const notation = toothNotations.find((one) => one === written);
  const fitting = toothNotations.filter((one) => toothByIso3950(text, one) !== undefined);
  if (!notation) {
    const why =
      fitting.length > 1
        ? `it is a tooth in ${fitting.join(" and in ")}, and not the same one`
        : "its notation is not known";
    return { found: text, remedy: `${why}; write fdi, universal or palmer in tooth_notation` };
  }
  const iso = toothByIso3950(text, notation);
  if (iso) return iso;
  const other = fitting.length > 0 ? `, but there is in ${fitting.join(" and in ")}` : "";
  return {
    found: text,
    remedy: `there is no such tooth in ${notation} notation${other}; ${examples[notation]}`,
  };
}

const examples: Record<ToothNotation, string> = {
  fdi: "write two digits as 26, or 54 for a primary tooth",
  universal: "write 1 to 32, or A to T for a primary tooth",
  palmer: "write the quadrant and the position as UR6, or URA for a primary tooth",
};
