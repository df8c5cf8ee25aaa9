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

/** Every chair's days of the period. */
export async function coverageOf(
  reach: RecordsReach,
  period: Period,
  practice: string | undefined,
  now = new Date(),
): Promise<CoverageChair[]> {
  const span = { from: judgedFrom(period.from), until: period.until };
  const [known, days, first] = await Promise.all([
    chairsKnown(reach, practice),
    keptWithin(reach, ["coverage", span, practice], () => coverageDays(reach, span, practice)),
    keptWithin(reach, "first days", () => firstDays(reach)),
  ]);
  const ofChair = byKey(days, (one) => `${one.practice}\n${one.chair}`);
  return coverageCalendar(
    known.map((chair) => ({
      ...chair,
      firstDay: first.get(chair.practice) ?? null,
      today: localDay(now, chair.zone),
      came: ofChair.get(`${chair.practice}\n${chair.chair}`) ?? [],
    })),
    period,
  );
}

function localDay(now: Date, zone: string): string {
  return new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short" }).format(now);
}
