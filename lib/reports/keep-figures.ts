import type { FiguresReach } from "@/lib/access/reach";
import { monthsUpTo, quarter } from "@/lib/records/period";
import { sampleRecords } from "@/lib/store/facts/sample-records";
import { quartersWithRecords } from "@/lib/store/figures/quarters-with-records";
import { keepMonths } from "@/lib/store/month-units/read-months";
import { partOf } from "@/lib/store/month-units/strata-parts";
import { measuresShown } from "./figures";

/** Told before each quarter: its name, how many are done and how many there are. */
export type KeepProgress = (name: string, done: number, of: number) => void;

/**
 * Judges and counts what is not kept yet of every quarter with records, the newest first and that one by strata too, so that figures
 * answer at once. What nobody has asked for by then is made when somebody does.
 */
export async function keepFigures(reach: FiguresReach, onProgress?: KeepProgress): Promise<void> {
  await sampleRecords(reach);
  const quarters = (await quartersWithRecords(reach)).reverse();
  for (const [done, name] of quarters.entries()) {
    onProgress?.(name, done, quarters.length);
    const period = quarter(Number(name.slice(0, 4)), Number(name.slice(6)));
    const months = monthsUpTo(period.until, 3).map(({ from }) => from);
    const measures = await measuresShown(reach, [period]);
    const kinds = done === 0 ? [undefined, "technique" as const, "case" as const] : [undefined];
    const parts = kinds.flatMap((strata) => measures.map((measure) => partOf(measure, strata)));
    await keepMonths(reach.practices, months, [...new Set(parts)]);
  }
}
