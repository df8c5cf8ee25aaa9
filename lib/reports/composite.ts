import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { type CompositeFigure, compositeOf } from "@/lib/audit/composite";
import type { SubjectKind } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import { opportunities } from "@/lib/store/figures/opportunities";
import { keptWithin } from "./kept-within";

/** Overall scores within the reach, in the order of period and subject; kept until the records change. */
export function composites(
  reach: FiguresReach | OwnReach,
  asked: {
    readonly periods: readonly Period[];
    readonly by: readonly Exclude<SubjectKind, "chair">[];
  },
): Promise<readonly CompositeFigure[]> {
  return keptWithin(reach, ["composites", asked], async () =>
    (await opportunities(reach, asked)).map(compositeOf),
  );
}
