import { z } from "zod";
import { type OwnReach, ownReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Figure } from "@/lib/audit/figure";
import { tooFewToTell } from "@/lib/audit/too-few-to-tell";
import type { Measured } from "@/lib/measures/measured";
import { measures } from "@/lib/measures/measures";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { type Period, rollingYear } from "@/lib/records/period";
import { ownCanalsToLookAt } from "@/lib/store/figures/own-canals-to-look-at";
import {
  type CompositePart,
  type CompositeView,
  compositeParts,
  compositeView,
} from "@/lib/views/composite";
import { titleOf, unitName } from "@/lib/views/measure-words";
import { ownFinding } from "@/lib/views/own-finding";
import { type LookLine, lookLine } from "@/lib/views/own-look";
import type { OwnStrip } from "@/lib/views/own-strip";
import { ownSummary, type SummaryLine } from "@/lib/views/own-summary";
import type { PeriodChoices } from "@/lib/views/period-choices";
import { periodWords } from "@/lib/views/period-words";
import { count } from "@/lib/views/quantity";
import { type Address, AskedWrongly } from "./asked-period";
import { type ClinicianCusum, clinicianCusum } from "./clinician-cusum";
import { composites } from "./composite";
import { criteriaShown } from "./criteria-shown";
import { keptWithin } from "./kept-within";
import { type MissesAsked, type OwnCriterionPage, ownCriteria } from "./own-criteria";
import { type OwnFigure, ownFigures } from "./own-figures";
import { type OwnMonth, ownMonths } from "./own-months";
import { type NoteView, noteView } from "./own-note";
import { ownPeriod } from "./own-period";
import { ownStrips } from "./own-strips";

export type ClinicianQuarter = {
  readonly period: { readonly name: string; readonly words: string };
  readonly periods: PeriodChoices;
  readonly code: string | null;
  /** No unit of the viewer's lies in the period. */
  readonly empty: boolean;
  readonly summary: readonly SummaryLine[];
  /** Measures with too few units to tell anything, and what little they say. */
  readonly tooFew: readonly { readonly title: string; readonly words: string }[];
  readonly look: { readonly lines: readonly LookLine[]; readonly more: string | null };
  readonly main: readonly OwnStrip[];
  readonly further: readonly OwnStrip[];
  readonly criteria: readonly OwnCriterionPage[];
  /** Both overall scores, and what they are made of. */
  readonly overall: { readonly view: CompositeView; readonly parts: readonly CompositePart[] };
  readonly months: readonly OwnMonth[];
  readonly runningSum: ClinicianCusum;
  readonly note: NoteView;
};

const mainMeasures = [
  "irrigation-time",
  "hypochlorite-time",
  "volume",
  "hypochlorite-volume",
  "separation-per-use",
  "separation-per-canal",
  "separation-per-visit",
];
const monthsMeasures = ["irrigation-time", "volume", "hypochlorite-volume", "separation-per-canal"];
const looksShown = 12;

const address = z.object({
  missed: z.string().optional(),
  at: z.coerce.number().int().min(1).catch(1).optional(),
});

/** The clinician's own quarter: their figures and nobody else's. @throws Refused, AskedWrongly */
export async function clinicianQuarter(viewer: Viewer, given: Address): Promise<ClinicianQuarter> {
  const reach = ownReach(viewer);
  const read = address.safeParse(given);
  if (!read.success) throw new AskedWrongly("The address asks for more than one period or list.");
  const { period: chosen, periods } = await ownPeriod(reach, given);
  const list = { criterion: read.data.missed, page: read.data.at ?? 1 };
  const [found, note, runningSum] = await Promise.all([
    keptWithin(reach, ["own quarter", chosen, list], () => figuresOf(reach, chosen, list)),
    noteView(viewer, chosen),
    clinicianCusum(reach, reach.clinicianKey, "yours", chosen),
  ]);
  const period = { name: chosen.name, words: periodWords(chosen) };
  return { period, periods, ...found, runningSum, note };
}

/** What follows from the records alone; kept until they change. */
async function figuresOf(
  reach: OwnReach,
  chosen: Period,
  list: MissesAsked,
): Promise<Omit<ClinicianQuarter, "period" | "periods" | "runningSum" | "note">> {
  const inForce = await criteriaShown(reach, [chosen]);
  const criteria = inForce.filter((one) => one.byClinician);
  const shown = [...measures.map(({ id }) => id), ...criteria.map(criterionMeasure)];
  const [own, overall, look] = await Promise.all([
    ownFigures(reach, shown, chosen),
    composites(reach, { periods: [chosen], by: ["clinician"] }),
    ownCanalsToLookAt(reach, chosen, looksShown),
  ]);
  const isCriterion = ({ figure }: OwnFigure) => figure.measure.startsWith("criterion/");
  const [months, strips, criteriaPages] = await Promise.all([
    ownMonths(reach, monthsOf(own), chosen),
    ownStrips(
      reach,
      chosen,
      own.filter((one) => !isCriterion(one)),
    ),
    ownCriteria(
      reach,
      own.filter(isCriterion),
      (name) => (name === chosen.name ? chosen : rollingYear(chosen)),
      list,
    ),
  ]);
  const more = look.count - look.canals.length;
  const first = own.find(({ figure }) => figure.about.kind === "clinician")?.figure.about;
  return {
    code: first?.kind === "clinician" ? first.code : null,
    empty: own.every(({ figure }) => figure.period !== chosen.name),
    summary: ownSummary(own, chosen.name),
    tooFew: own.flatMap(({ figure }) => tooFewOf(figure)),
    look: {
      lines: look.canals.map(lookLine),
      more: more > 0 ? `and ${count(more)} more ${unitName({ measure: "volume" }, more)}` : null,
    },
    main: strips.filter((strip) => mainMeasures.includes(strip.measure)),
    further: strips.filter((strip) => !mainMeasures.includes(strip.measure)),
    criteria: criteriaPages,
    overall: {
      view: compositeView(overall, inForce, () => "Yours"),
      parts: overall.flatMap((figure) => compositeParts(figure, inForce)),
    },
    months,
  };
}

/** The main measures, and the criteria whose target was not reached: every one would be a wall of charts. */
function monthsOf(own: readonly OwnFigure[]): Measured[] {
  const missed = own
    .map(({ figure }) => figure)
    .filter((figure) => figure.kind === "rate" && figure.inTheseRecords === "not reached");
  return [
    ...monthsMeasures.map((measure) => ({ measure })),
    ...missed.map(({ measure, criterion }) => ({ measure, ...(criterion ? { criterion } : {}) })),
  ];
}

function tooFewOf(figure: Figure): ClinicianQuarter["tooFew"] {
  const asked = mainMeasures.includes(figure.measure) || figure.criterion !== undefined;
  return asked && tooFewToTell(figure)
    ? [{ title: titleOf(figure), words: ownFinding(figure) }]
    : [];
}
