import type { Behind } from "@/lib/measures/people-behind";
import type { Period } from "@/lib/records/period";
import { holds } from "./calendar";
import { lineKey } from "./line-key";
import type { PeopleInTime } from "./people-in-time";

/** The counts of people of each practice, as wholes and parts in time. */
export function practicesInTime(
  behind: readonly Behind[],
  periods: readonly Period[],
): PeopleInTime[] {
  const people = new Map(behind.map((one) => [lineKey(one.about, one.period), one.people]));
  const practices = new Map(
    behind.flatMap(({ about }) => (about.kind === "practice" ? [[about.code, about]] : [])),
  );
  return [...practices.values()].flatMap((about) => {
    const tree = (whole: Period): PeopleInTime => ({
      key: lineKey(about, whole.name),
      people: people.get(lineKey(about, whole.name)) ?? 0,
      parts: partsOf(whole, periods).map(tree),
    });
    return periods.filter((one) => !periods.some((other) => within(one, other))).map(tree);
  });
}

/** The longest periods within one. */
function partsOf(whole: Period, periods: readonly Period[]): Period[] {
  const inside = periods.filter((one) => within(one, whole));
  return inside.filter((one) => !inside.some((other) => within(one, other)));
}

function within(one: Period, other: Period): boolean {
  return one !== other && holds(other, one);
}
