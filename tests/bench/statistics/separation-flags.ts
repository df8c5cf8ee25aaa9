import { holderReach } from "@/lib/access/reach";
import { standardLevels } from "@/lib/audit/flag-levels";
import { type Flagged, flaggedOf, type PageFlags } from "@/lib/audit/flagged";
import type { Period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";

const separations = ["separation-per-canal", "separation-per-use", "separation-per-visit"];

/** A clinician's rate of separations in a quarter, on the page of that measure with all clinicians. */
export type QuarterFlag = {
  quarter: string;
  measure: string;
  code: string;
  flagged: Flagged;
  page: PageFlags;
};

/** Every clinician's flags of separations, flagged or not, quarter by quarter, each measure on a page of its own. */
export async function separationFlags(quarters: readonly Period[]): Promise<QuarterFlag[]> {
  const reach = holderReach().figures;
  const all: QuarterFlag[] = [];
  for (const quarter of quarters) {
    for (const measure of separations) {
      const found = await figures(reach, {
        measures: [measure],
        periods: [quarter],
        by: ["group", "clinician"],
      });
      const page = flaggedOf(found, standardLevels);
      for (const flagged of page.flagged) {
        const { about } = flagged.figure;
        if (about.kind !== "clinician") continue;
        all.push({ quarter: quarter.name, measure, code: about.code, flagged, page });
      }
    }
  }
  return all;
}

/** A line of the table of what is flagged. */
export function flagRow({ quarter, measure, code, flagged, page }: QuarterFlag) {
  const { figure, pooled, flag } = flagged;
  return {
    quarter,
    measure,
    clinician: code,
    events: figure.numerator,
    of: figure.denominator,
    "%": percent(figure.numerator / figure.denominator),
    "all %": percent(pooled.rate),
    "design effect": pooled.designEffect.toFixed(2),
    m: page.m,
    adjusted: flag.adjusted.toPrecision(2),
    flag: `${flag.tier ?? "none"}, ${flag.direction}`,
  };
}

function percent(share: number): string {
  return (100 * share).toFixed(2);
}
