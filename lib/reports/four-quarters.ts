import type { FiguresReach } from "@/lib/access/reach";
import { opensOnFourQuarters } from "@/lib/audit/few-units";
import type { Figure } from "@/lib/audit/figure";
import { type Period, rollingYear } from "@/lib/records/period";
import { figures } from "./figures";

/**
 * The figures, those of a rate with few units in the quarter replaced by its four rolling quarters for every subject,
 * so that what is drawn side by side covers the same days. Other periods than quarters are left as they are.
 */
export async function onFourQuarters(
  reach: FiguresReach,
  period: Period,
  of: readonly Figure[],
): Promise<Figure[]> {
  if (!/^\d{4}-Q[1-4]$/.test(period.name)) return [...of];
  const small = [...new Set(of.map((figure) => figure.measure))].filter((measure) =>
    opensOnFourQuarters(ofPeople(of, measure)),
  );
  if (small.length === 0) return [...of];
  const year = await figures(reach, {
    measures: small,
    periods: [rollingYear(period)],
    by: ["group", "practice", "clinician", "chair"],
  });
  return [...of.filter((figure) => !small.includes(figure.measure)), ...year];
}

/** What is drawn side by side decides: clinicians, or chairs where a criterion is theirs. */
function ofPeople(of: readonly Figure[], measure: string): Figure[] {
  const some = of.filter((figure) => figure.measure === measure);
  const clinicians = some.filter((figure) => figure.about.kind === "clinician");
  return clinicians.length > 0
    ? clinicians
    : some.filter((figure) => figure.about.kind === "chair");
}
