import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import { measures } from "@/lib/measures/measures";
import type { Period } from "@/lib/records/period";
import { acrossFinding, referencesOf } from "./across-finding";
import type { IntervalChart } from "./chart-rows";
import { type CriterionCounts, criterionCounts } from "./criterion-counts";
import { methodWords, reasonsInWords } from "./figure-cells";
import { type FigureRow, figureRow } from "./figure-row";
import { inOrderOfCodes, intervalChart, rowLabel } from "./interval-chart";
import { measureAddress } from "./lead-address";
import { definitionOf, populationOf, sourceOf, titleOf, unitName } from "./measure-words";
import type { StandingInPeriod } from "./protocol/standing-in-period";
import { count, percent, setShare } from "./quantity";
import { type StrataView, strataView } from "./strata-view";
import { basisWords } from "./stratum-words";
import { toldApart } from "./told-apart";
import { unrecordedWords } from "./unrecorded-words";

export type MeasureView = {
  readonly measure: string;
  readonly title: string;
  /** Terms and what they say: definition, population, why, source, target, interval. */
  readonly facts: readonly { readonly term: string; readonly words: string }[];
  /** Which units are counted and which are left out, with counts. */
  readonly population: readonly string[];
  readonly whole: FigureRow | null;
  /** What the whole's estimate is. */
  readonly wholeIs: string;
  /** There is no unit in the period that is shown. */
  readonly empty: boolean;
  /** Of a criterion that was in force on no day of it: that, and since when it is. */
  readonly notInForce: string | null;
  /** Across clinicians; null where the measure is not told apart by clinician. */
  readonly across: IntervalChart | null;
  readonly clinicians: readonly FigureRow[];
  readonly places: { readonly chart: IntervalChart; readonly rows: readonly FigureRow[] };
  readonly strata: StrataView | null;
  readonly basis:
    | readonly {
        readonly basis: string;
        readonly canals: string;
        readonly share: string;
        readonly clinicians: string;
      }[]
    | null;
  readonly outcomes: readonly CriterionCounts[] | null;
};

export type MeasureViewOf = {
  readonly measured: Measured;
  /** The period that is shown: the chosen one, or its four rolling quarters. */
  readonly shown: Period;
  readonly practice: string | undefined;
  readonly filters: Readonly<Record<string, string | undefined>>;
  /** By group, practice, clinician (with what they are compared with) and chair. */
  readonly figures: readonly Figure[];
  readonly strata: readonly Figure[] | null;
  readonly basis:
    | readonly {
        readonly basis: string | null;
        readonly canals: number;
        readonly clinicians: number;
      }[]
    | null;
  /** Since when a criterion is in force; null for what is no criterion. */
  readonly standing: StandingInPeriod | null;
};

/** A measure's page in words and rows. */
export function measureView(of: MeasureViewOf): MeasureView {
  const { measured, filters } = of;
  const { measure, criterion } = measured;
  const kinds = (kind: Figure["about"]["kind"]) =>
    inOrderOfCodes(of.figures.filter((figure) => figure.about.kind === kind));
  const [group] = kinds("group");
  const whole = group && named(group, of.practice);
  const [clinicians, practices, chairs] = [kinds("clinician"), kinds("practice"), kinds("chair")];
  const places = [...(of.practice ? [] : practices), ...chairs];
  const wholes = [...(whole ? [whole] : [])];
  const outcomes = [
    ...wholes,
    ...(of.practice ? [] : practices),
    ...(criterion?.byClinician === false ? chairs : clinicians),
  ].filter((figure): figure is RateFigure => figure.kind === "rate");
  const told = criterion?.byClinician !== false;
  const nameOf = toldApart(clinicians, (figure) => rowLabel(figure.about));
  return {
    measure,
    title: titleOf(measured),
    facts: factsOf(measured, of.figures, of.standing),
    population: whole ? populationLines(whole) : [],
    empty: (group?.population ?? 0) === 0,
    notInForce: of.standing?.notInForce ?? null,
    whole: whole
      ? figureRow(whole, of.practice ? `practice ${of.practice}` : "all practices")
      : null,
    wholeIs: `${whole?.kind === "rate" ? "Share" : "Median"} of ${unitName(measured, 2)}`,
    across: told
      ? intervalChart({
          measure: measured,
          figures: clinicians,
          references: referencesOf(whole),
          title: acrossFinding(measured, whole, clinicians),
          hrefOf: (figure) =>
            figure.about.kind === "clinician"
              ? measureAddress(measure, { ...filters, clinician: figure.about.key }, "#records")
              : undefined,
        })
      : null,
    clinicians: told ? clinicians.map((figure) => figureRow(figure, nameOf(figure))) : [],
    places: {
      chart: intervalChart({
        measure: measured,
        figures: places,
        references: referencesOf(whole),
        title: acrossFinding(measured, whole, places),
      }),
      rows: [...places, ...wholes].map((figure) => figureRow(figure)),
    },
    strata: of.strata && strataView(measure, of.strata),
    basis: of.basis && basisRows(of.basis),
    outcomes: criterion
      ? outcomes.map((figure) => ({
          ...criterionCounts(figure),
          ...(figure.about.kind === "clinician" ? { name: nameOf(figure) } : {}),
        }))
      : null,
  };
}

/** A whole within one practice is called by that practice. */
function named(group: Figure, practice: string | undefined): Figure {
  return practice ? { ...group, about: { kind: "practice", code: practice } } : group;
}

function factsOf(
  measured: Measured,
  figures: readonly Figure[],
  standing: StandingInPeriod | null,
): MeasureView["facts"] {
  const { measure, criterion } = measured;
  const why = criterion?.rationale ?? measures.find((one) => one.id === measure)?.why;
  const methods = methodWords(figures);
  return [
    { term: "Definition", words: definitionOf(measured) },
    { term: "Population", words: populationOf(measured) },
    ...(why ? [{ term: "Why", words: why }] : []),
    { term: "Source", words: sourceOf(measured) },
    ...(criterion
      ? [{ term: "Target", words: `${setShare(criterion.target)}. ${criterion.targetSource}` }]
      : []),
    ...(standing ? [{ term: "In force", words: sentence(standing.standing) }] : []),
    ...(methods
      ? [
          {
            term: "Intervals",
            words: `95 %, ${methods}.${criterion?.unit === "chair-day" ? "" : alike}`,
          },
        ]
      : []),
    ...(!criterion && figures[0]?.kind === "rate"
      ? [{ term: "None seen", words: ruleOfThree }]
      : []),
  ];
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

const alike =
  " Units of one patient resemble each other; the interval that allows for patients stands beside the plain one and is the one to read.";
const ruleOfThree =
  "None is not a rate of 0: it says how high the rate may still be. As a rule of thumb that is 3 divided by the units; the interval gives it exactly.";

function populationLines(whole: Figure): string[] {
  const units = (number: number) => `${count(number)} ${unitName(whole, number)}`;
  const excluded = reasonsInWords(whole.excluded);
  const excepted = reasonsInWords(whole.excepted);
  return [
    `${units(whole.population)} in all.`,
    excluded
      ? `Left out, each under the first reason that applies: ${excluded}.`
      : "None is left out.",
    ...(excepted ? [`Not met with a coded reason, taken out as exceptions: ${excepted}.`] : []),
    `Not recorded: ${count(whole.notRecorded)}. ${whole.criterion ? unrecordedWords(whole.criterion) : "They are in no estimate."}`,
  ];
}

function basisRows(rows: NonNullable<MeasureViewOf["basis"]>): NonNullable<MeasureView["basis"]> {
  const all = rows.reduce((sum, row) => sum + row.canals, 0);
  return rows.map((row) => ({
    basis: basisWords(row.basis),
    canals: count(row.canals),
    share: all === 0 ? "none" : percent(row.canals / all),
    clinicians: count(row.clinicians),
  }));
}
