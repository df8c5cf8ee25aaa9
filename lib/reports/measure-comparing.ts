import type { FiguresReach } from "@/lib/access/reach";
import { caseMixOf } from "@/lib/audit/case-mix";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { flaggedOf } from "@/lib/audit/flagged";
import { funnelOf } from "@/lib/audit/funnel";
import { pooledOf } from "@/lib/audit/pooled";
import { shrunkenOf } from "@/lib/audit/shrunken";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import { type BeyondChance, beyondChance } from "@/lib/views/beyond-chance";
import { type CaseMixView, caseMixView } from "@/lib/views/case-mix-view";
import { funnelChart } from "@/lib/views/funnel-chart";
import type { FunnelChart } from "@/lib/views/funnel-rows";
import { inOrderOfCodes } from "@/lib/views/interval-chart";
import { measureAddress } from "@/lib/views/lead-address";
import { figures } from "./figures";
import { levelsInForce } from "./flag-levels";
import { keptWithin } from "./kept-within";

/** A rate's clinicians compared: flags, funnel, case mix. */
export type ComparingView = {
  readonly funnel: FunnelChart;
  readonly chance: BeyondChance;
  readonly caseMix: CaseMixView | null;
};

/** Separations of canals are standardised over the case; a visit holds canals of several kinds. */
const standardised = ["separation-per-use", "separation-per-canal"];

/**
 * Kept until the records change, or the levels do.
 * @param of the figures shown, by group and clinician; null for what is no rate of clinicians
 */
export async function measureComparing(
  reach: FiguresReach,
  measured: Measured,
  shown: Period,
  filters: Readonly<Record<string, string | undefined>>,
  of: readonly Figure[],
): Promise<ComparingView | null> {
  const { measure } = measured;
  const clinicians = inOrderOfCodes(
    of.filter((figure) => figure.kind === "rate" && figure.about.kind === "clinician"),
  ).filter((figure): figure is RateFigure => figure.kind === "rate");
  const whole = of.filter((figure) => figure.about.kind === "group");
  const pooled = pooledOf([...whole, ...clinicians], measure);
  if (!pooled || measure === "separation-per-instrument") return null;
  const levels = await levelsInForce(reach);
  return keptWithin(reach, ["comparing", measured, shown, filters, levels], async () => {
    const byCase = standardised.includes(measure)
      ? await figures(reach, {
          measures: [measure],
          periods: [shown],
          by: ["group", "clinician"],
          strata: "case",
        })
      : null;
    const page = flaggedOf([...whole, ...clinicians], levels);
    const drawn = page.flagged.map(({ figure }) => figure);
    return {
      funnel: funnelChart({
        measure: measured,
        page,
        pooled,
        funnel: funnelOf(drawn, pooled),
        shrunken: shrunkenOf(drawn),
        hrefOf: ({ figure }) =>
          figure.about.kind === "clinician"
            ? measureAddress(measure, { ...filters, clinician: figure.about.key }, "#records")
            : undefined,
      }),
      chance: beyondChance(page, filters),
      caseMix: byCase && caseMixView(measure, caseMixOf(byCase, clinicians)),
    };
  });
}
