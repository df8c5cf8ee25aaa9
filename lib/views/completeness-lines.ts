import type { Completeness } from "@/lib/audit/completeness";
import { titleOf, unitName } from "./measure-words";
import { count, percent, setShare } from "./quantity";

/** How complete the records behind a measure are, in words. */
export type CompletenessLine = {
  readonly measure: string;
  readonly title: string;
  readonly recorded: string;
  readonly share: string;
  /** What it means for the figure; empty where there is nothing to say. */
  readonly note: string;
  readonly underFloor: boolean;
};

export function completenessLines(of: readonly Completeness[]): CompletenessLine[] {
  return of.map((one) => {
    const underFloor = one.share !== null && one.floor !== null && one.share < one.floor;
    return {
      measure: one.measure,
      title: titleOf(one),
      recorded: `${count(one.recorded)} of ${count(one.due)} ${unitName(one, one.due)}`,
      share: one.share === null ? "nothing due" : percent(one.share),
      note: noteOf(one, underFloor),
      underFloor,
    };
  });
}

function noteOf(one: Completeness, underFloor: boolean): string {
  if (underFloor && one.floor !== null)
    return `under the floor of ${setShare(one.floor)}: not assessable`;
  if (one.floor === null) return "no floor is set";
  return one.share === null ? "" : `floor ${setShare(one.floor)}`;
}
