import { type FiguresReach, narrowed } from "@/lib/access/reach";
import type { AuditComputed, VersionHeld } from "@/lib/audit/cycle/audit-content";
import { frozenFlags } from "@/lib/audit/cycle/frozen-flags";
import { flaggedFrom } from "@/lib/audit/cycle/to-look-at";
import { flaggedOf, type PageFlags } from "@/lib/audit/flagged";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { AuditForm } from "@/lib/records/audit-work";
import { dayAfter, type Period, period as periodNamed } from "@/lib/records/period";
import { heldInPeriod } from "@/lib/store/audits/held-in-period";
import { recordVersions } from "@/lib/store/audits/record-versions";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { dataState } from "@/lib/store/quality/data-state";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { peopleCounts } from "@/lib/store/quality/people-counts";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { practicesWithin } from "@/lib/store/records/practices";
import { composites } from "../composite";
import { criteriaShown } from "../criteria-shown";
import { figures } from "../figures";
import { levelsInForce } from "../flag-levels";
import { keptWithin } from "../kept-within";
import { ownFigures } from "../own-figures";
import {
  adherenceOf,
  beganIn,
  completeness,
  measureFigures,
  medians,
  rates,
} from "../quarter-parts";

/** Measures beside the criteria that an audit reports. */
export const auditMeasures: readonly string[] = [
  ...medians,
  "hypochlorite-volume",
  ...rates,
  "separation-per-canal",
];

type FlagLevels = PageFlags["levels"];
type Scope = Pick<AuditForm, "practice" | "period" | "criteria">;

/** What the records alone come to, for the scope of an audit; kept until they change. @param before the scope of the audit it repeats */
export async function auditComputed(
  lead: FiguresReach,
  { practice, period, criteria }: Scope,
  before: Scope | null,
): Promise<AuditComputed> {
  const reach = narrowed(lead, practice ?? undefined);
  const levels = await levelsInForce(reach);
  const form = { practice, period, criteria };
  return keptWithin(reach, ["audit", form, before?.period, levels], () =>
    computed(reach, form, before, levels),
  );
}

async function computed(
  reach: FiguresReach,
  form: Scope,
  before: Scope | null,
  levels: FlagLevels,
): Promise<AuditComputed> {
  const period = periodOf(form);
  const criteria = (await criteriaShown(reach, [period])).filter(({ id }) =>
    form.criteria.includes(id),
  );
  const measured = [...auditMeasures, ...criteria.map(criterionMeasure)];
  const [{ shown }, adherence, measures, overall, own, state] = await Promise.all([
    measureFigures(reach, period),
    adherenceOf(reach, period, criteria),
    figures(reach, { measures: auditMeasures, periods: [period], by: ["group", "practice"] }),
    composites(reach, { periods: [period], by: ["group", "practice", "clinician"] }),
    ownFigures(
      reach,
      [...auditMeasures, ...criteria.filter((one) => one.byClinician).map(criterionMeasure)],
      period,
    ),
    dataState(reach),
  ]);
  const from = { across: shown, adherence };
  const lastOfPeriod = dayAfter(period.until, -1);
  return {
    period,
    practices: (await practicesWithin(reach)).map(({ code, name }) => ({ code, name })),
    criteria,
    versions: await versionsHeld(reach, criteria, period),
    began: Object.fromEntries(await beganIn(reach, period, criteria)),
    records: await recordVersions(reach, period),
    lastDay: state.lastDay && state.lastDay < lastOfPeriod ? state.lastDay : lastOfPeriod,
    people: await peopleCounts(reach, period),
    weeks: await weeklyVisits(reach, period),
    completeness: (await completeness(reach, period)).filter(
      ({ measure, criterion }) => criterion === undefined || measured.includes(measure),
    ),
    held: (await heldInPeriod(reach, period)).within,
    disagreeing: (await disagreeingCanals(reach, period, 1))[0]?.all ?? 0,
    ...from,
    measures,
    composites: overall,
    flags: frozenFlags(flaggedOf(flaggedFrom(from), levels), flaggedFrom(from)),
    own,
    earlier: before ? await earlierFigures(reach, periodOf(before), measured) : null,
  };
}

async function earlierFigures(reach: FiguresReach, period: Period, measures: readonly string[]) {
  const found = await figures(reach, { measures, periods: [period], by: ["group", "practice"] });
  return { period, figures: found };
}

/** The versions that practices wrote of the criteria, as far as they held on some day of the period. */
async function versionsHeld(
  reach: FiguresReach,
  criteria: readonly Criterion[],
  period: Period,
): Promise<VersionHeld[]> {
  const { versions } = await protocolWithin(reach);
  return versions
    .filter(
      (one) =>
        one.from < period.until &&
        criteria.some(({ id }) => id === one.criterion.id) &&
        !versions.some(
          (later) =>
            later.practice === one.practice &&
            later.criterion.id === one.criterion.id &&
            later.from > one.from &&
            later.from <= period.from,
        ),
    )
    .map(({ criterion, practice, from, writtenOn, inForce }) => ({
      criterion: criterion.id,
      ...{ practice, from, writtenOn, inForce },
    }));
}

/** @throws RangeError where the stored name is of none, which no form lets through */
export function periodOf({ period }: Pick<AuditForm, "period">): Period {
  const found = periodNamed(period);
  if (!found) throw new RangeError(`no period: ${period}`);
  return found;
}
