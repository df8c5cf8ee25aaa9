import type { Period } from "@/lib/records/period";
import type { Behind, Place } from "../people-behind";
import type { MonthUnits } from "./alike";
import { Patients } from "./patients";
import { bucketsOf, subjectOf } from "./subjects";
import type { Part } from "./values";

/** What is asked of the months' units. */
export type BehindAsked = {
  readonly measure: string;
  /** Made of whole months. */
  readonly periods: readonly Period[];
  readonly by: readonly Place["kind"][];
};

/** How many patients are behind a measure's units by place in each period: all, and those whose units count. */
export function behindOf(months: readonly MonthUnits[], asked: BehindAsked): Behind[] {
  const by = new Set(asked.by);
  const seen = new Seen(new Patients());
  return asked.periods.flatMap((period) => {
    const within = months.filter(({ month }) => month >= period.from && month < period.until);
    return bucketsOf(asked.measure, within, by).map((bucket) => {
      const { parts } = bucket;
      const inCount = parts.filter(([, { excluded }]) => excluded === null);
      const counted = [inCount, inCount.filter(([, { excepted }]) => excepted === null)]
        .map((some) => seen.count(some))
        .filter((people) => people > 0);
      return {
        about: subjectOf(bucket) as Place,
        period: period.name,
        people: seen.count(parts),
        ...(counted.length === 0 ? {} : { eligible: Math.min(...counted) }),
      };
    });
  });
}

/** Counts the patients of parts, each once; which of them were met is stamped, so that nothing is cleared in between. */
class Seen {
  private stamps = new Int32Array(0);
  private stamp = 0;

  constructor(private readonly patients: Patients) {}

  count(parts: readonly Part[]): number {
    this.stamp += 1;
    let found = 0;
    for (const [month, { visits }] of parts) {
      const numbers = this.patients.of(month);
      if (this.patients.count > this.stamps.length) this.grow();
      for (const visit of visits) {
        const patient = typeof visit === "number" ? numbers[visit] : undefined;
        if (patient === undefined || this.stamps[patient] === this.stamp) continue;
        this.stamps[patient] = this.stamp;
        found += 1;
      }
    }
    return found;
  }

  private grow(): void {
    const wider = new Int32Array(2 * this.patients.count);
    wider.set(this.stamps);
    this.stamps = wider;
  }
}
