import { fewUnits } from "@/lib/audit/few-units";
import type { Figure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import { acrossFinding, referencesOf } from "./across-finding";
import { flagOf } from "./beyond-chance";
import type { IntervalChart } from "./chart-rows";
import { day } from "./day";
import { intervalChart } from "./interval-chart";
import { measureAddress } from "./lead-address";
import { definitionOf, titleOf } from "./measure-words";
import { count } from "./quantity";

/** One measure across clinicians. */
export type Family = {
  readonly measure: string;
  readonly title: string;
  readonly href: string;
  readonly definition: string;
  /** Which days it covers, where that is not the chosen period. */
  readonly span: { readonly words: string; readonly href: string } | null;
  readonly chart: IntervalChart;
};

export type FamilyOf = {
  /** The chosen period and practice, for addresses. */
  readonly filters: { readonly period: string; readonly practice: string | undefined };
  readonly flags: PageFlags;
};

/** @param some its figures by group and clinician, all of one period */
export function leadFamily(measure: string, some: readonly Figure[], of: FamilyOf): Family {
  const { filters } = of;
  const measured = { measure };
  const parts = some.filter((figure) => figure.about.kind === "clinician");
  const whole = wholeFor(some, filters.practice);
  const span = some[0]?.period ?? filters.period;
  const onYear = span !== filters.period;
  return {
    measure,
    title: titleOf(measured),
    href: measureAddress(measure, filters),
    definition: definitionOf(measured),
    span: onYear
      ? {
          words: `Four quarters up to ${day(span.slice(-10))}: in the quarter itself at least one clinician has fewer than ${count(fewUnits)} units.`,
          href: measureAddress(measure, { ...filters, span: "quarter" }),
        }
      : null,
    chart: intervalChart({
      measure: measured,
      figures: parts,
      references: referencesOf(whole),
      title: acrossFinding(measured, whole, parts),
      flagOf: (figure) => flagOf(of.flags, figure),
      hrefOf: (figure) =>
        figure.about.kind === "clinician"
          ? measureAddress(measure, { ...filters, clinician: figure.about.key }, "#records")
          : undefined,
    }),
  };
}

/** All that the page covers as one figure, called by the practice's name where it is one. */
function wholeFor(some: readonly Figure[], practice: string | undefined): Figure | undefined {
  const group = some.find((figure) => figure.about.kind === "group");
  return group && practice ? { ...group, about: { kind: "practice", code: practice } } : group;
}
