import type { MonthUnits } from "@/lib/measures/units/alike";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { criteriaOf, type Protocol } from "@/lib/protocol/protocol";
import type { Lacking } from "../figures/criterion/units-sql";
import { overallUnits } from "./overall-units";

/** The measures whose units say what visits lack; undefined where they do not. */
export function measuresOfLacking(protocol: Protocol): string[] | undefined {
  const counting: string[] = [];
  for (const { id } of criteriaOf(protocol)) {
    const overall = overallUnits(protocol, id);
    if (!overall) return undefined;
    if (overall.count) counting.push(criterionMeasure({ id }));
  }
  return counting;
}

/** What each criterion lacks at each visit of the months, or at some of them, by their units of `measuresOfLacking`. */
export function lackingOf(
  protocol: Protocol,
  months: readonly MonthUnits[],
  some?: ReadonlySet<number>,
): Lacking {
  const found: { visit: number; place: number; id: string }[] = [];
  criteriaOf(protocol).forEach(({ id }, place) => {
    const overall = overallUnits(protocol, id);
    if (!overall?.count) return;
    for (const { visits, units } of months)
      for (const one of units.get(criterionMeasure({ id })) ?? []) {
        const { shared, excluded, excepted, numerator, missing } = one;
        if (shared || excluded !== null || excepted !== null) continue;
        if (missing === 0 && !(overall.floorless && !numerator)) continue;
        for (const at of one.visits) {
          const visit = typeof at === "number" ? visits?.ids[at] : undefined;
          if (visit !== undefined && some?.has(visit) !== false) found.push({ visit, place, id });
        }
      }
  });
  found.sort((one, other) => one.visit - other.visit || one.place - other.place);
  return {
    visits: `{${found.map(({ visit }) => visit).join(",")}}`,
    criteria: `{${found.map(({ id }) => `"${id}"`).join(",")}}`,
  };
}
