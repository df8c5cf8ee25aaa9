import { countsOverall } from "@/lib/protocol/overall";
import { type Protocol, spansOf } from "@/lib/protocol/protocol";

/** How the units of a criterion count in overall scores, and in what visits lack. */
export type OverallUnits = {
  /** All of them count, or none. */
  readonly count: boolean;
  /** What is not met is lacking, as well as what is not recorded. */
  readonly floorless: boolean;
};

/**
 * How a criterion's units count overall, where that is the same for each of them, so that it follows from the units kept;
 * undefined where its versions differ in it, or one counts from a later day than it is in force.
 */
export function overallUnits(protocol: Protocol, id: string): OverallUnits | undefined {
  const spans = spansOf(protocol, id);
  const [first] = spans.map(({ criterion }) => criterion);
  if (!first) return { count: false, floorless: false };
  const [count, floorless] = [countsOverall(first), first.completenessFloor === null];
  const alike = spans.every(
    ({ criterion, from, scoredFrom }) =>
      countsOverall(criterion) === count &&
      (criterion.completenessFloor === null) === floorless &&
      (!count || scoredFrom === from),
  );
  return alike ? { count, floorless } : undefined;
}
