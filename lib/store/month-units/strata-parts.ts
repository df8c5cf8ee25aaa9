import type { StratumKind } from "@/lib/measures/tally";
import type { Alike, MonthUnits } from "@/lib/measures/units/alike";
import { carriesStratum } from "../figures/unit-sql";

/** The name under which a measure's units are kept: by strata where they carry them. */
export function partOf(measure: string, strata: StratumKind | undefined): string {
  return strata && carriesStratum(measure) ? `${measure}@${strata}` : measure;
}

/** What a name of `partOf` stands for. */
export function askedBy(part: string): {
  readonly measure: string;
  readonly strata?: StratumKind;
} {
  const [measure = "", strata] = part.split("@");
  return strata === undefined ? { measure } : { measure, strata: strata as StratumKind };
}

/** The months with the units of each stratum under the measure's id and its stratum, and the names of all that there are, in order. */
export function apartByStratum(
  months: readonly MonthUnits[],
  parts: readonly string[],
): { readonly months: MonthUnits[]; readonly measures: string[] } {
  const apart = months.map((month) => ({
    ...month,
    units: new Map(parts.flatMap((part) => [...byMeasure(month, part)])),
  }));
  const measures = parts.flatMap((part) =>
    [...new Set(apart.flatMap(({ units }) => [...units.keys()]))]
      .filter((name) => name === part || name.startsWith(`${part}/`))
      .sort(),
  );
  return { months: apart, measures };
}

function byMeasure({ units }: MonthUnits, part: string): MonthUnits["units"] {
  const found = new Map<string, Alike[]>();
  for (const alike of units.get(part) ?? []) {
    const name = alike.measure ?? part;
    const some = found.get(name);
    if (some) some.push(alike);
    else found.set(name, [alike]);
  }
  return found;
}
