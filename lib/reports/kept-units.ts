import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { type UnitsAsked, unitList } from "@/lib/store/figures/unit-list";
import { keptWithin } from "./kept-within";

/** A page of the units behind a figure, and how many there are; kept until the records change. */
export function keptUnits(
  reach: FiguresReach | OwnReach,
  asked: UnitsAsked,
): ReturnType<typeof unitList> {
  return keptWithin(reach, ["units", asked], () => unitList(reach, asked));
}
