import type { Comparison } from "@/lib/audit/comparison";
import type { Completeness } from "@/lib/audit/completeness";
import type { CompositeFigure } from "@/lib/audit/composite";
import type { Figure } from "@/lib/audit/figure";
import type { Criterion } from "@/lib/protocol/criterion";
import type { AuditForm, AuditWork } from "@/lib/records/audit-work";
import type { Period } from "@/lib/records/period";
import type { FrozenFlags } from "./frozen-flags";

/** Which records an audit rests on: rows by table, and a digest for each visit and for what hangs on none. */
export type RecordVersions = {
  readonly counts: Readonly<Record<string, number>>;
  readonly visits: Readonly<Record<string, string>>;
  readonly others: Readonly<Record<string, string>>;
};

/** A version of a criterion that was written by a practice and held on some day of the period. */
export type VersionHeld = {
  readonly criterion: string;
  readonly practice: string;
  readonly from: string;
  readonly writtenOn: string;
  readonly inForce: boolean;
};

/** A clinician's figure with what it is compared with; the note says where it covers other days. */
export type ComparedFigure = {
  readonly figure: Figure;
  readonly comparison: Comparison;
  readonly note: string | null;
};

/** All of an audit that is computed from the records alone: the same records give the same bytes. */
export type AuditComputed = {
  readonly period: Period;
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  /** Of the scope, in page order. */
  readonly criteria: readonly Criterion[];
  readonly versions: readonly VersionHeld[];
  /** By the id of a criterion, the days on which it came into force within the period. */
  readonly began: Readonly<Record<string, readonly string[]>>;
  readonly records: RecordVersions;
  /** The last day with a visit, within the period. */
  readonly lastDay: string | null;
  readonly people: readonly {
    readonly practice: string;
    readonly visits: number;
    readonly patients: number;
    readonly clinicians: number;
  }[];
  readonly weeks: readonly {
    readonly practice: string;
    readonly chair: string;
    readonly monday: string | null;
    readonly visits: number;
  }[];
  readonly completeness: readonly Completeness[];
  /** Held rows of the period. */
  readonly held: number;
  /** Canals whose volume, flow and time disagree. */
  readonly disagreeing: number;
  /** Criteria in the period: group, practice, and clinician or chair. */
  readonly adherence: readonly Figure[];
  /** Measures as they are shown across clinicians: rates with few units on four quarters. */
  readonly across: readonly Figure[];
  /** Measures in the period, by group and practice. */
  readonly measures: readonly Figure[];
  readonly composites: readonly CompositeFigure[];
  readonly flags: FrozenFlags;
  /** Each clinician's own figures with their comparison. */
  readonly own: readonly ComparedFigure[];
  /** Of the audit that this one repeats: criteria and measures by group and practice in its period. */
  readonly earlier: { readonly period: Period; readonly figures: readonly Figure[] } | null;
};

/** An audit as it stands: the pages, the report and a signed version are all made of this. */
export type AuditContent = {
  readonly form: AuditForm;
  readonly computed: AuditComputed;
  readonly work: AuditWork;
  /** What the report, which may leave the house, masks. It rests on the records of the whole year, and so is not among what is computed. */
  readonly masked: AuditMasked;
  readonly signed: SignedAs | null;
};

/** What is masked as it rests on few patients, or would give such a thing away. */
export type AuditMasked = {
  /** Criteria's figures of places, by `figureId`. */
  readonly lines: readonly string[];
  /** Ids of the places whose overall scores, and figures of measures, are masked. */
  readonly places: readonly string[];
  /** practice/patients and practice/clinicians. */
  readonly people: readonly string[];
};

/** Under what a version was signed. */
export type SignedAs = {
  readonly version: number;
  /** Of a restated version. */
  readonly reason: string | null;
  readonly by: string;
  readonly at: string;
  /** When the last import was published; null where there is none. */
  readonly cutOff: string | null;
  /** Held rows that tell no day: they may belong to the period. */
  readonly heldWithoutDay: number;
  readonly software: string;
};
