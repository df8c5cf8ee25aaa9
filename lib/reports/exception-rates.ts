import { type FiguresReach, narrowed } from "@/lib/access/reach";
import { exceptionShares } from "@/lib/audit/exception-shares";
import { criterionId, criterionMeasure } from "@/lib/protocol/criterion";
import { criteriaWithin, type Protocol } from "@/lib/protocol/protocol";
import type { Period } from "@/lib/records/period";
import type { ExceptionChoice } from "@/lib/store/exceptions/exception-list";
import { type ExceptionRates, exceptionRates } from "@/lib/views/exception-rates";
import { criterionTitles } from "./criterion-on-day";
import { figures } from "./figures";

/** How often each clinician's units are excepted, practice by practice, of the criteria that have an exception there. */
export async function exceptionRatesOf(
  reach: FiguresReach,
  protocol: Protocol,
  period: Period,
  there: readonly ExceptionChoice[],
): Promise<ExceptionRates> {
  const practices = [...new Set(there.map(({ practice }) => practice))];
  const title = criterionTitles(protocol);
  const shares = practices.map(async (practice) => {
    const some = new Set(
      there.flatMap((one) => (one.practice === practice ? [one.criterion] : [])),
    );
    const measures = criteriaWithin(protocol, [practice], period)
      .filter((one) => one.byClinician && one.exceptions !== null && some.has(one.id))
      .map(criterionMeasure);
    const found =
      measures.length === 0
        ? []
        : await figures(narrowed(reach, practice), {
            measures,
            periods: [period],
            by: ["group", "clinician"],
          });
    return { practice, shares: exceptionShares(found) };
  });
  return exceptionRates(await Promise.all(shares), (measure) =>
    title(criterionId(measure) ?? measure),
  );
}
