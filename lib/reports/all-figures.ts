import type { FiguresReach } from "@/lib/access/reach";
import { quarter } from "@/lib/records/period";
import { revision } from "@/lib/store/facts/revision";
import { quartersWithRecords } from "@/lib/store/figures/quarters-with-records";
import { canonicalJson } from "@/lib/views/canonical-json";
import { composites } from "./composite";
import { figures } from "./figures";
import { sha256 } from "./fingerprint";

/** Every figure of a quarter in canonical JSON. */
export type QuarterFigures = { readonly quarter: string; readonly json: string };

/**
 * Every figure of every quarter with records within the reach: all measures and criteria of the group, practices, chairs and
 * clinicians, those of canals also apart by technique and by case, and the overall scores.
 */
export async function allFigures(reach: FiguresReach): Promise<QuarterFigures[]> {
  const found: QuarterFigures[] = [];
  for (const name of await quartersWithRecords(reach)) {
    const periods = [quarter(Number(name.slice(0, 4)), Number(name.slice(6)))];
    const by = ["group", "practice", "clinician"] as const;
    const everybody = [...by, "chair"] as const;
    const all = {
      figures: await figures(reach, { periods, by: everybody }),
      byTechnique: await figures(reach, { periods, by: everybody, strata: "technique" }),
      byCase: await figures(reach, { periods, by: everybody, strata: "case" }),
      overall: await composites(reach, { periods, by }),
    };
    found.push({ quarter: name, json: canonicalJson(all) });
  }
  return found;
}

/** All figures in one fingerprint, with the revision of the records that they are of. */
export async function figuresFingerprint(
  reach: FiguresReach,
): Promise<{ readonly quarters: string[]; readonly sha256: string; readonly revision: string }> {
  const before = await revision(reach);
  const all = await allFigures(reach);
  if ((await revision(reach)) !== before) return figuresFingerprint(reach);
  return {
    quarters: all.map(({ quarter }) => quarter),
    sha256: sha256(all.map(({ json }) => `${json}\n`).join("")),
    revision: before,
  };
}
