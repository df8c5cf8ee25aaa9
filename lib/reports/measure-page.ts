import { z } from "zod";
import { type FiguresReach, leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Figure } from "@/lib/audit/figure";
import { measures } from "@/lib/measures/measures";
import { type Period, period as periodNamed } from "@/lib/records/period";
import { basisShares } from "@/lib/store/figures/basis-shares";
import { type MeasureView, measureView } from "@/lib/views/measure-page";
import { type Address, type Asked, AskedWrongly, askedFigures } from "./asked-period";
import { figures } from "./figures";
import { onFourQuarters } from "./four-quarters";
import { keptWithin } from "./kept-within";
import { type ComparingView, measureComparing } from "./measure-comparing";
import { measureOverTime, type OverTimeView } from "./measure-over-time";
import { type MeasureRecords, measureRecords } from "./measure-records";
import { measuredAs } from "./measured-as";
import { standingOfMeasure } from "./protocol/standing-of-measure";
import { withReferences } from "./reference";

export type MeasurePage = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly view: MeasureView;
  /** What is shown: the chosen period, or the four quarters up to its end. */
  readonly shown: Period;
  /** The address asks for the quarter itself where the page would open on four. */
  readonly span: "quarter" | undefined;
  readonly records: MeasureRecords;
  /** Null for what is no rate of clinicians. */
  readonly comparing: ComparingView | null;
  readonly overTime: OverTimeView;
};

const asked = z.object({ span: z.enum(["quarter"]).optional().catch(undefined) });

/** Every measure has this page; strata are for what is measured of canals. */
const stratified = measures
  .filter((one) => one.kind === "median" && one.per === "canal")
  .map((one) => one.id);

/** One measure as the clinical lead sees it. @throws Refused, AskedWrongly */
export async function measurePage(
  viewer: Viewer,
  measure: string,
  address: Address,
): Promise<MeasurePage> {
  const lead = leadReach(viewer);
  const measured = await measuredAs(lead, measure);
  if (!measured) throw new AskedWrongly("There is no such measure.");
  const { reach, period, periods, practices, practice } = await askedFigures(lead, address);
  const { span } = asked.parse({ span: address.span });
  const filters = { period: period.name, practice, span };
  const [ofShown, strata, basis] = await Promise.all([
    shownFigures(reach, measure, period, span).then(async ({ shown, of }) => {
      const [all, records, comparing, overTime] = await Promise.all([
        compared(reach, measure, of),
        measureRecords(reach, measured, shown, address, filters, of),
        measureComparing(reach, measured, shown, filters, of),
        measureOverTime(reach, measured, period, address.whose, practice, of),
      ]);
      return { shown, all, records, comparing, overTime };
    }),
    stratified.includes(measure)
      ? figures(reach, {
          measures: [measure],
          periods: [period],
          by: ["group", "clinician"],
          strata: "technique",
        })
      : null,
    stratified.includes(measure)
      ? keptWithin(reach, ["basis shares", period], () => basisShares(reach, period))
      : null,
  ]);
  const codes = practice ? [practice] : practices.map(({ code }) => code);
  const view = measureView({
    measured,
    shown: ofShown.shown,
    practice,
    filters,
    figures: ofShown.all,
    strata,
    basis,
    standing: await standingOfMeasure(reach, measure, codes, ofShown.shown),
  });
  const { shown, records, comparing, overTime } = ofShown;
  return { period, periods, practices, practice, view, shown, span, records, comparing, overTime };
}

async function shownFigures(
  reach: FiguresReach,
  measure: string,
  period: Period,
  span: "quarter" | undefined,
) {
  const by = ["group", "practice", "clinician", "chair"] as const;
  const chosen = await figures(reach, { measures: [measure], periods: [period], by });
  const of = span === "quarter" ? chosen : await onFourQuarters(reach, period, chosen);
  const name = of[0]?.period ?? period.name;
  return { shown: name === period.name ? period : (periodNamed(name) ?? period), of };
}

/** The clinicians' figures with what each is compared with, beside the others. */
async function compared(
  reach: FiguresReach,
  measure: string,
  of: readonly Figure[],
): Promise<Figure[]> {
  const apart = measure !== "separation-per-instrument";
  return apart ? withReferences(reach, of) : [...of];
}
