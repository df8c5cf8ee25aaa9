import type { CompositeFigure } from "@/lib/audit/composite";
import { type PublishedScores, publishedScores } from "@/lib/audit/disclosure/masked-figure";
import { nothingMasked, type ReportMasks } from "@/lib/audit/disclosure/report-masks";
import type { RateFigure } from "@/lib/audit/figure";
import type { Criterion } from "@/lib/protocol/criterion";
import { dayAfter, type Period } from "@/lib/records/period";
import { type AdherenceLine, adherenceLine } from "./adherence-line";
import { cautions } from "./cautions";
import { type Change, changeWords } from "./change-words";
import { chosenPercent } from "./chosen-percent";
import { clusteredWords } from "./clustered-words";
import { type CompositeView, compositeView } from "./composite";
import { day } from "./day";
import { type MaskedLine, maskedLine, maskedScores } from "./masked-line";
import { definitionOf } from "./measure-words";
import { peopleCount, peopleWords } from "./people-count";
import { periodWords } from "./period-words";
import { subjectName } from "./subject-name";

/** What the report is made of. */
export type AdherenceParts = {
  readonly period: Period;
  /** Codes of the practices it speaks of, in order. */
  readonly practices: readonly string[];
  /** Is that every practice of the group. */
  readonly wholeGroup: boolean;
  /** Figures of criteria by group, practice and chair, in page order. */
  readonly figures: readonly RateFigure[];
  /** What became of each figure since the period before, with both; a figure without one has no change. */
  readonly changes: readonly Change[];
  /** Overall scores by group (of several practices) and practice; never by clinician. */
  readonly composites: readonly CompositeFigure[];
  readonly people: readonly {
    practice: string;
    visits: number;
    patients: number;
    clinicians: number;
  }[];
  /** What is masked: lines of few people, and what would give them away. */
  readonly masks: ReportMasks;
  /** When the last import was published; null where there is none. */
  readonly published: Date | null;
  readonly version: string;
};

/** The adherence report: the one view that the page previews and the file holds. */
export type AdherenceReport = {
  readonly period: {
    readonly name: string;
    readonly words: string;
    readonly from: string;
    readonly to: string;
  };
  readonly scope: string;
  /** ISO 8601 in UTC, or null. */
  readonly cutOff: string | null;
  readonly cutOffWords: string;
  readonly software: string;
  readonly criteria: readonly AdherenceCriterion[];
  /** Overall scores, as figures and in words. */
  readonly composites: readonly PublishedScores[];
  readonly overall: CompositeView;
  readonly people: readonly AdherencePeople[];
  readonly cautions: readonly string[];
};

export type AdherenceCriterion = {
  readonly criterion: Criterion;
  readonly definition: string;
  readonly targetWords: string;
  readonly lines: readonly ReportedLine[];
};

/** A line of the report with which interval to read, and what changed; empty where there is nothing to say. */
export type ReportedLine = ((AdherenceLine & { readonly masked?: undefined }) | MaskedLine) & {
  readonly read: string;
  readonly change: string;
};

export type AdherencePeople = {
  readonly practice: string;
  /** null: masked; visits with the patients, as one visit is one patient. */
  readonly visits: number | null;
  readonly patients: number | null;
  readonly clinicians: number | null;
  readonly patientWords: string;
  readonly clinicianWords: string;
};

/** Puts the report together. */
export function adherenceReportOf(parts: AdherenceParts): AdherenceReport {
  const { period, published, masks } = parts;
  const measures = [...new Set(parts.figures.map((figure) => figure.measure))];
  const criteria = measures.flatMap((measure) => {
    const some = parts.figures.filter((figure) => figure.measure === measure);
    return adherenceCriterion(some, parts.changes, parts.masks) ?? [];
  });
  return {
    period: {
      name: period.name,
      words: periodWords(period),
      from: period.from,
      to: dayAfter(period.until, -1),
    },
    scope: scopeWords(parts),
    cutOff: published?.toISOString() ?? null,
    cutOffWords: published
      ? `${day(published.toISOString())}, ${published.toISOString().slice(11, 16)} UTC`
      : "no import yet",
    software: `Canal Audit ${parts.version}`,
    criteria,
    composites: parts.composites.map((one) => publishedScores(one, masks.score(one.about))),
    overall: overallOf(
      parts,
      criteria.map(({ criterion }) => criterion),
    ),
    people: parts.people.map(({ practice, visits, ...counted }) => {
      const [patients = null, clinicians = null] = (["patients", "clinicians"] as const).map(
        (who) => (masks.people(practice, who) ? null : peopleCount(counted[who])),
      );
      return {
        practice,
        visits: patients === null ? null : visits,
        patients,
        clinicians,
        patientWords: peopleWords(patients),
        clinicianWords: peopleWords(clinicians),
      };
    }),
    cautions,
  };
}

/** Both scores of each subject in words, masked ones among them in their places. */
function overallOf(
  { composites, masks }: AdherenceParts,
  criteria: readonly Criterion[],
): CompositeView {
  const view = compositeView(composites, criteria, ({ about }) => subjectName(about));
  const rows = composites.flatMap(({ about }, place) =>
    masks.score(about) ? maskedScores({ about }) : (view.rows[place] ?? []),
  );
  return { ...view, rows };
}

/** One criterion with a line for each of its figures; undefined where there is none. */
export function adherenceCriterion(
  figures: readonly RateFigure[],
  changes: readonly Change[],
  masks: ReportMasks = nothingMasked,
): AdherenceCriterion | undefined {
  const [first] = figures;
  if (!first?.criterion) return undefined;
  return {
    criterion: first.criterion,
    definition: definitionOf(first),
    targetWords: targetWords(first.criterion),
    lines: figures.map((figure) =>
      masks.line(figure.about, figure.criterion?.id ?? "")
        ? { ...maskedLine(figure), read: "", change: "" }
        : reportedLine(figure, changes),
    ),
  };
}

function reportedLine(figure: RateFigure, changes: readonly Change[]): ReportedLine {
  const change = changes.find(({ now }) => now === figure);
  // Where one of the two has no rate the line says that already, or its period's own report does.
  const told = change && figure.estimate !== null && change.before.estimate !== null;
  return {
    ...adherenceLine(figure),
    read: clusteredWords(figure),
    change: told ? changeWords(change) : "",
  };
}

/** A criterion's target and whose choice it is. */
export function targetWords(criterion: Criterion): string {
  return `${chosenPercent(criterion.target)}. ${criterion.targetSource}`;
}

function scopeWords({ practices, wholeGroup }: AdherenceParts): string {
  if (practices.length === 0) return "no practice";
  const named =
    practices.length === 1 ? `practice ${practices[0]}` : `practices ${practices.join(", ")}`;
  return wholeGroup && practices.length > 1 ? `the whole group: ${named}` : named;
}
