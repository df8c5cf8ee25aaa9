import type { FiguresReach } from "@/lib/access/reach";
import { differenceOf } from "@/lib/audit/difference";
import { reportMasks } from "@/lib/audit/disclosure/report-masks";
import type { RateFigure } from "@/lib/audit/figure";
import { type Period, shifted } from "@/lib/records/period";
import { dataState } from "@/lib/store/quality/data-state";
import { peopleCounts } from "@/lib/store/quality/people-counts";
import { practicesWithin } from "@/lib/store/records/practices";
import { type AdherenceReport, adherenceReportOf } from "@/lib/views/adherence-report";
import type { Change } from "@/lib/views/change-words";
import { subjectId } from "@/lib/views/subject-id";
import { adherenceFigures } from "./adherence-figures";
import { composites } from "./composite";
import { criteriaShown } from "./criteria-shown";
import { masksAround } from "./disclosure-masks";
import { keptWithin } from "./kept-within";
import { softwareVersion } from "./software-version";

/** The adherence report of a period within a reach: one view for the page and the file, kept until the records change. */
export function adherenceReport(reach: FiguresReach, period: Period): Promise<AdherenceReport> {
  return keptWithin(reach, ["adherence report", period], () => computed(reach, period));
}

async function computed(reach: FiguresReach, period: Period): Promise<AdherenceReport> {
  const practices = (await practicesWithin(reach)).map((practice) => practice.code);
  const earlier = shifted(period, -1);
  const wholeGroup = reach.practices === null;
  const masksOf = async (of: Period) => {
    const [masks, criteria] = await Promise.all([
      masksAround(reach, of),
      criteriaShown(reach, [of]),
    ]);
    return reportMasks(masks, { period: of, wholeGroup, practices, criteria });
  };
  const [figures, before, overall, people, { published }, masks, masksBefore] = await Promise.all([
    adherenceFigures(reach, [period], practices, { parts: true }),
    adherenceFigures(reach, [earlier], practices, { parts: true }),
    composites(reach, {
      periods: [period],
      by: practices.length > 1 ? ["group", "practice"] : ["practice"],
    }),
    peopleCounts(reach, period),
    dataState(reach),
    masksOf(period),
    masksOf(earlier),
  ]);
  return adherenceReportOf({
    period,
    practices,
    wholeGroup,
    figures,
    changes: changesSince(
      before.filter(({ about, criterion }) => !masksBefore.line(about, criterion?.id ?? "")),
      figures,
    ),
    composites: overall,
    people,
    masks,
    published,
    version: softwareVersion,
  });
}

/** Each figure beside that of the same criterion and subject in the period before, where that is published. */
function changesSince(before: readonly RateFigure[], figures: readonly RateFigure[]): Change[] {
  const idOf = ({ measure, about }: RateFigure) => `${measure} ${about.kind} ${subjectId(about)}`;
  const earlier = new Map(before.map((figure) => [idOf(figure), figure]));
  return figures.flatMap((now) => {
    const then = earlier.get(idOf(now));
    return then ? [{ now, before: then, difference: differenceOf(now, then) }] : [];
  });
}
