import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Period } from "@/lib/records/period";
import { chairsKnown, coverageDays, firstDays } from "@/lib/store/records/coverage-days";
import { byKey } from "@/lib/views/by-key";
import { type CoverageChair, coverageCalendar, missingWords } from "@/lib/views/coverage-calendar";
import { judgedFrom } from "@/lib/views/expected-records";
import { type Address, type Asked, askedPeriod } from "./asked-period";
import { keptWithin } from "./kept-within";

export type CoverageView = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly chairs: readonly CoverageChair[];
  /** How much is missing, in one sentence. */
  readonly missing: string;
};

/** What was expected of each chair against what came; no clinicians and no figures. @throws Refused, AskedWrongly */
export async function coveragePage(viewer: Viewer, address: Address): Promise<CoverageView> {
  const reach = recordsReach(viewer);
  const { period, periods, practices, practice } = await askedPeriod(reach, address);
  const chairs = await coverageOf(reach, period, practice);
  return { period, periods, practices, practice, chairs, missing: missingWords(chairs) };
}

/** Every chair's days of the period; kept until the records or the chairs change, and for a day. */
export async function coverageOf(
  reach: RecordsReach,
  period: Period,
  practice: string | undefined,
  now = new Date(),
): Promise<CoverageChair[]> {
  const chairs = (await chairsKnown(reach, practice)).map(({ zone, ...chair }) => ({
    ...chair,
    today: localDay(now, zone),
  }));
  return keptWithin(reach, ["coverage", period, practice, chairs], async () => {
    const span = { from: judgedFrom(period.from), until: period.until };
    const [days, first] = await Promise.all([
      coverageDays(reach, span, practice),
      firstDays(reach),
    ]);
    const ofChair = byKey(days, (one) => `${one.practice}\n${one.chair}`);
    return coverageCalendar(
      chairs.map((chair) => ({
        ...chair,
        firstDay: first.get(chair.practice) ?? null,
        came: ofChair.get(`${chair.practice}\n${chair.chair}`) ?? [],
      })),
      period,
    );
  });
}

function localDay(now: Date, zone: string): string {
  return new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short" }).format(now);
}
