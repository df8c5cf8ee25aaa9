import { type FiguresReach, forMasks } from "@/lib/access/reach";
import { periodsAround } from "@/lib/audit/disclosure/calendar";
import { type Masks, masksOf } from "@/lib/audit/disclosure/masks";
import type { Behind } from "@/lib/measures/people-behind";
import type { Period } from "@/lib/records/period";
import { patientsBehind } from "@/lib/store/figures/patients-behind";
import { peopleBehind } from "@/lib/store/quality/people-behind";
import { comparing } from "@/lib/store/wall/as-whom";
import { criteriaShown } from "./criteria-shown";
import { keptWithin } from "./kept-within";

/** How many criteria are looked at side by side. */
const atATime = 4;

/**
 * What is masked in every export that has a day in common with the period: the same for whoever asks, as what is masked at one
 * practice depends on the others; kept until the records change.
 */
export function masksAround(reach: FiguresReach, period: Period): Promise<Masks> {
  const all = forMasks(reach);
  const periods = periodsAround(period);
  const found = async () => {
    const [people, criteria] = await Promise.all([
      peopleBehind(all, periods),
      criteriaShown(all, periods),
    ]);
    const behind = new Map<string, Behind[]>();
    const left = [...criteria];
    const next = async (): Promise<void> => {
      for (let one = left.shift(); one; one = left.shift())
        behind.set(one.id, await patientsBehind(all, one, periods));
    };
    await Promise.all(Array.from({ length: atATime }, next));
    return masksOf({ periods, ...people, criteria: behind });
  };
  return keptWithin(all, ["masks", periods], () => comparing(found));
}
