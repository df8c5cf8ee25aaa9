import type { FiguresReach } from "@/lib/access/reach";
import type { RateFigure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import type { Subject } from "@/lib/measures/tally";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { criteriaShown } from "./criteria-shown";
import { figures } from "./figures";

/**
 * Adherence by group (of several practices), practice and, for what staff and equipment do together, chair. Never by clinician,
 * whatever the reach allows. A group or practice without units has a figure that says so.
 *
 * @param practices codes of the practices within the reach
 * @param asked.parts also the parts of the whole: practices and chairs
 * @param asked.only ids of the criteria; all in force where absent
 * @returns in the order of criterion, period and subject
 */
export async function adherenceFigures(
  reach: FiguresReach,
  periods: readonly Period[],
  practices: readonly string[],
  asked: { readonly parts: boolean; readonly only?: readonly string[] },
): Promise<RateFigure[]> {
  const inForce = await criteriaShown(reach, periods);
  const criteria = asked.only ? inForce.filter(({ id }) => asked.only?.includes(id)) : inForce;
  const several = practices.length > 1;
  const subjects: Subject[] = [
    ...(several ? [{ kind: "group" } as const] : []),
    ...(several && !asked.parts
      ? []
      : practices.map((code) => ({ kind: "practice", code }) as const)),
  ];
  const kinds = [...new Set(subjects.map((subject) => subject.kind))];
  const [ofClinicians, ofChairs] = await Promise.all(
    [false, true].map((chairs) =>
      figures(reach, {
        measures: criteria.filter((one) => one.byClinician !== chairs).map(criterionMeasure),
        periods,
        by: [...kinds, ...(chairs && asked.parts ? (["chair"] as const) : [])],
      }),
    ),
  );
  const found = [...(ofClinicians ?? []), ...(ofChairs ?? [])].filter(
    (figure) => figure.kind === "rate",
  );
  return criteria.flatMap((criterion) =>
    periods.flatMap((period) => {
      const here = found.filter(
        (figure) => figure.criterion?.id === criterion.id && figure.period === period.name,
      );
      return [
        ...subjects.map(
          (subject) =>
            here.find((one) => same(one.about, subject)) ?? without(criterion, period, subject),
        ),
        ...here.filter((figure) => figure.about.kind === "chair"),
      ];
    }),
  );
}

function same(one: Subject, other: Subject): boolean {
  if (one.kind === "practice" && other.kind === "practice") return one.code === other.code;
  return one.kind === other.kind;
}

/** The figure of a subject that has no units in the period. */
function without(criterion: Criterion, period: Period, subject: Subject): RateFigure {
  const figure = figureOf({
    kind: "rate",
    measure: criterionMeasure(criterion),
    criterion,
    subject,
    period,
    population: 0,
    excluded: {},
    excepted: {},
    notRecorded: 0,
    numerator: 0,
    denominator: 0,
    notMet: 0,
    clusters: null,
  });
  if (figure.kind !== "rate") throw new Error("a criterion's figure is a rate");
  return figure;
}
