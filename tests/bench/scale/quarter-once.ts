import { holderReach } from "@/lib/access/reach";
import { caseMixOf } from "@/lib/audit/case-mix";
import type { RateFigure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import { standardLevels } from "@/lib/audit/flag-levels";
import { flaggedOf } from "@/lib/audit/flagged";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { measures } from "@/lib/measures/measures";
import type { Tally } from "@/lib/measures/tally";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { quarter, shifted } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { withHome } from "@/lib/reports/with-home";
import { others } from "@/lib/store/figures/others";
import { tallies } from "@/lib/store/figures/tallies";
import { duckQuarter } from "./duck-quarter";

/**
 * The figures of one quarter in a process of its own, its home in CANAL_AUDIT_HOME: prints milliseconds as JSON, each the middle of
 * five runs after one that warms the process up with another quarter. Nothing is remembered between the runs that are afresh.
 */
const period = quarter(2026, 2);
const all = [...measures.map(({ id }) => id), ...defaults.map(criterionMeasure)];
const reach = holderReach().figures;
const by = ["group", "clinician"] as const;
const ends = medianEnds(level);
/** What is standardised over the case, as on the measure's page. */
const standardised = ["separation-per-use", "separation-per-canal"];

const found = await withHome(async () => {
  const counted = (of = period) => tallies(reach, { measures: all, periods: [of], by, ends });
  const drawn = (found: readonly Tally[]) => flaggedOf(found.map(figureOf), standardLevels);
  const kept = await counted();
  const byCase = await tallies(reach, {
    measures: standardised,
    periods: [period],
    by,
    ends,
    strata: "case",
  });
  const workers = kept.flatMap(({ subject }) =>
    subject.kind === "clinician" ? [subject.key] : [],
  );
  const targets = [...new Set(workers)].map((worker) => ({ worker, period: 0 }));
  const compared = all.filter((id) => id !== "separation-per-instrument");
  const beside = () =>
    others(reach, { measures: compared, periods: [period], targets, comparison: "practice", ends });
  drawn(await counted(shifted(period, -1)));
  await beside();
  const trend = Array.from({ length: 20 }, (_, place) => shifted(period, place - 19));
  const ofTrend = () =>
    tallies(reach, { measures: ["irrigation-time"], periods: trend, by: ["group"], ends });
  const afresh = await middle(async () => drawn(await counted()));
  const asked = { measures: all, periods: [period], by };
  await figures(reach, asked);
  await ofTrend();
  return {
    figures: kept.length,
    clinicians: targets.length,
    canals: kept.find(
      ({ measure, subject }) => measure === "irrigation-time" && subject.kind === "group",
    )?.population,
    afresh,
    withOthers: await middle(async () => {
      drawn(await counted());
      await beside();
    }),
    again: await middle(() => figures(reach, asked)),
    trend: await middle(ofTrend),
    statistics: await middle(async () => everything(kept, byCase)),
    ...(process.argv.includes("--duck") ? await duckQuarter(reach, period, all) : {}),
  };
});
console.log(JSON.stringify(found));

/** Every interval of the quarter and of its cells of the case, the flags, and each clinician standardised over the cells. */
function everything(kept: readonly Tally[], byCase: readonly Tally[]) {
  const found = kept.map(figureOf);
  const cells = byCase.map(figureOf);
  return {
    flags: flaggedOf(found, standardLevels),
    caseMix: standardised.map((measure) => {
      const whole = found.filter(
        (one): one is RateFigure =>
          one.kind === "rate" && one.measure === measure && one.about.kind === "clinician",
      );
      return caseMixOf(
        cells.filter((cell) => cell.measure === measure),
        whole,
      );
    }),
  };
}

async function middle(work: () => Promise<unknown>): Promise<number> {
  const taken: number[] = [];
  for (let time = 0; time < 5; time += 1) {
    const started = performance.now();
    await work();
    taken.push(performance.now() - started);
  }
  return taken.sort((a, b) => a - b)[2] ?? Number.NaN;
}
