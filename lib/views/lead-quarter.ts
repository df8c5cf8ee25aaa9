import type { Completeness } from "@/lib/audit/completeness";
import type { CompositeFigure } from "@/lib/audit/composite";
import type { Figure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import type { Criterion } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { type AdherenceMatrix, adherenceMatrix } from "./adherence-matrix";
import { type BeyondChance, beyondChance } from "./beyond-chance";
import type { MonthsChart } from "./chart-rows";
import { type CompletenessLine, completenessLines } from "./completeness-lines";
import { type CompositeView, compositeView } from "./composite";
import { day } from "./day";
import { heldWords } from "./held-words";
import { inOrderOfCodes, rowLabel } from "./interval-chart";
import { measureAddress, visitAddress } from "./lead-address";
import { type Family, leadFamily } from "./lead-family";
import { lookLines } from "./lead-look";
import type { LookLine } from "./lead-look-criteria";
import { monthsChart } from "./months-chart";
import { count } from "./quantity";
import { toldApart } from "./told-apart";
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
  readonly matrix: AdherenceMatrix;
  readonly overall: CompositeView;
  readonly months: readonly MonthsChart[];
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
  /** In force in the period, in page order. */
  readonly criteria: readonly Criterion[];
  /** Criteria in the chosen period, by group, practice, and clinician or chair. */
  readonly adherence: readonly Figure[];
  /** By the id of a criterion, the days of the period on which it came into force where it was not before. */
  readonly began?: ReadonlyMap<string, readonly string[]>;
  /** Measures as they are shown across clinicians: rates with few units on four quarters. */
  readonly across: readonly Figure[];
  readonly composites: readonly CompositeFigure[];
  /** No unit lies in the chosen period. */
  readonly empty: boolean;
  readonly ofMonths: readonly Figure[];
  /** Of every clinician's rate on the page. */
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
    empty: of.empty,
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
    families: inOrder.map((measure) =>
      leadFamily(
        measure,
        of.across.filter((figure) => figure.measure === measure),
        { filters, flags: of.flags },
      ),
    ),
    matrix: adherenceMatrix({
      period: of.period,
      whole: wholeName(of),
      criteria: of.criteria,
      figures: of.adherence,
      ...(of.began ? { began: of.began } : {}),
      flags: of.flags,
      filters,
    }),
    overall: overallOf(of),
    months: inOrder.map((measure) =>
      monthsChart({
        measure: { measure },
        months: of.months,
        figures: of.ofMonths.filter((figure) => figure.measure === measure),
        hrefOf: (one) => measureAddress(measure, { ...filters, period: one.name }),
      }),
    ),
  };
}

/** Each practice's criteria; with one practice its own alone, not once more as a group. */
function toJudge(of: LeadQuarterOf): Figure[] {
  return of.adherence.filter((figure) => figure.about.kind === "practice");
}

/** Practices, where there are several, and clinicians in the order of the rota. */
function overallOf(of: LeadQuarterOf): CompositeView {
  const alone = of.practice !== undefined || of.practices.length === 1;
  const clinicians = inOrderOfCodes(
    of.composites.filter(({ about }) => about.kind === "clinician"),
  );
  const others = of.composites.filter(
    ({ about }) => about.kind === "practice" || (about.kind === "group" && !alone),
  );
  const nameOf = toldApart(clinicians, ({ about }) => rowLabel(about));
  return compositeView([...others, ...clinicians], of.criteria, (figure) =>
    figure.about.kind === "clinician"
      ? nameOf(figure)
      : figure.about.kind === "group"
        ? "All practices"
        : rowLabel(figure.about),
  );
}

/** What all that the page covers is called. */
function wholeName({ practice, practices }: LeadQuarterOf): string {
  const [first, ...others] = practices;
  return practice ?? (first && others.length === 0 ? first.code : "All practices");
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
