import type { Completeness } from "@/lib/audit/completeness";
import { fewUnits } from "@/lib/audit/few-units";
import type { Figure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import { acrossFinding, referencesOf } from "./across-finding";
import { type BeyondChance, beyondChance, flagOf } from "./beyond-chance";
import type { IntervalChart, MonthsChart } from "./chart-rows";
import { type CompletenessLine, completenessLines } from "./completeness-lines";
import { day } from "./day";
import { heldWords } from "./held-words";
import { intervalChart } from "./interval-chart";
import { measureAddress, visitAddress } from "./lead-address";
import { type LookLine, lookLines } from "./lead-look";
import { definitionOf, titleOf } from "./measure-words";
import { monthsChart } from "./months-chart";
import { count } from "./quantity";
import { type ChairWeek, type WeekGrid, weekGrid } from "./week-grid";

export type LeadQuarter = {
  readonly empty: boolean;
  readonly weeks: WeekGrid;
  readonly completeness: readonly (CompletenessLine & { readonly href: string })[];
  readonly held: string;
  readonly disagreeing: {
    readonly words: string;
    readonly canals: readonly {
      readonly id: string;
      readonly words: string;
      readonly href: string;
    }[];
  };
  readonly look: readonly LookLine[];
  readonly chance: BeyondChance;
  readonly families: readonly Family[];
  readonly months: readonly MonthsChart[];
};

/** One measure across clinicians, or chairs. */
export type Family = {
  readonly measure: string;
  readonly title: string;
  readonly href: string;
  readonly definition: string;
  /** Which days it covers, where that is not the chosen period. */
  readonly span: { readonly words: string; readonly href: string } | null;
  readonly chart: IntervalChart;
};

type Canal = {
  readonly practice: string;
  readonly sessionId: string;
  readonly canal: string;
  readonly tooth: string;
  readonly day: string;
  readonly all: number;
};

export type LeadQuarterOf = {
  readonly period: Period;
  readonly practice: string | undefined;
  readonly practices: readonly { readonly code: string }[];
  readonly months: readonly Period[];
  readonly weeks: readonly ChairWeek[];
  readonly held: readonly { readonly table: string; readonly rows: number }[];
  readonly disagreeing: readonly Canal[];
  readonly lastDay: string | null;
  readonly completeness: readonly Completeness[];
  /** The chosen period's own figures. */
  readonly quarter: readonly Figure[];
  /** The same as they are shown across clinicians: rates with few units on four quarters. */
  readonly across: readonly Figure[];
  readonly ofMonths: readonly Figure[];
  /** Of every clinician's rate among `across`. */
  readonly flags: PageFlags;
};

/** The lead's quarter in words and rows. */
export function leadQuarterView(of: LeadQuarterOf): LeadQuarter {
  const filters = { period: of.period.name, practice: of.practice };
  const weeks = weekGrid(of.weeks, of.period, of.lastDay);
  const measures = [...new Set(of.across.map((figure) => figure.measure))];
  const order = of.completeness.map((one) => one.measure);
  const inOrder = measures.sort((one, other) => order.indexOf(one) - order.indexOf(other));
  return {
    empty: of.quarter.every((figure) => figure.population === 0),
    weeks,
    completeness: completenessLines(of.completeness).map((line) => ({
      ...line,
      href: measureAddress(line.measure, filters),
    })),
    held: heldWords(of.held),
    disagreeing: disagreeingWords(of.disagreeing),
    look: lookLines({
      criteria: toJudge(of),
      completeness: of.completeness,
      gaps: weeks.gaps,
      disagreeing: of.disagreeing[0]?.all ?? 0,
      filters,
    }),
    chance: beyondChance(of.flags, filters),
    families: inOrder.map((measure) => familyOf(measure, of, filters)),
    months: inOrder.map((measure) =>
      monthsChart({
        measure: measuredAs(measure, of),
        months: of.months,
        figures: of.ofMonths.filter((figure) => figure.measure === measure),
        hrefOf: (one) => measureAddress(measure, { ...filters, period: one.name }),
      }),
    ),
  };
}

/** Each practice's criteria; with one practice its own alone, not once more as a group. */
function toJudge(of: LeadQuarterOf): Figure[] {
  return of.quarter.filter((figure) => figure.criterion && figure.about.kind === "practice");
}

function familyOf(
  measure: string,
  of: LeadQuarterOf,
  filters: Readonly<Record<string, string | undefined>>,
): Family {
  const some = of.across.filter((figure) => figure.measure === measure);
  const measured = measuredAs(measure, of);
  const kind = measured.criterion?.byClinician === false ? "chair" : "clinician";
  const parts = some.filter((figure) => figure.about.kind === kind);
  const whole = wholeFor(some, of.practice);
  const span = some[0]?.period ?? of.period.name;
  const onYear = span !== of.period.name;
  return {
    measure,
    title: titleOf(measured),
    href: measureAddress(measure, filters),
    definition: definitionOf(measured),
    span: onYear
      ? {
          words: `Four quarters up to ${day(span.slice(-10))}: in the quarter itself at least one ${kind} has fewer than ${count(fewUnits)} units.`,
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

/** A measure with the criterion that its figures were judged by. */
function measuredAs(measure: string, of: LeadQuarterOf): Measured {
  return of.across.find((figure) => figure.measure === measure) ?? { measure };
}

/** All that the page covers as one figure, called by the practice's name where it is one. */
function wholeFor(some: readonly Figure[], practice: string | undefined): Figure | undefined {
  const group = some.find((figure) => figure.about.kind === "group");
  return group && practice ? { ...group, about: { kind: "practice", code: practice } } : group;
}

function disagreeingWords(canals: readonly Canal[]): LeadQuarter["disagreeing"] {
  const all = canals[0]?.all ?? 0;
  return {
    words:
      all === 0
        ? "In no canal do volume, flow and time disagree by over a tenth, where all three are there."
        : `In ${count(all)} ${all === 1 ? "canal" : "canals"} volume, flow and time disagree by over a tenth, or continuous delivery lasted longer than preparation${all > canals.length ? `; the latest ${count(canals.length)} are listed` : ""}.`,
    canals: canals.map((one) => ({
      id: `${one.practice}/${one.sessionId}/${one.canal}`,
      words: `${day(one.day)}, ${one.practice}, tooth ${one.tooth}, canal ${one.canal}`,
      href: visitAddress(one.practice, one.sessionId),
    })),
  };
}
