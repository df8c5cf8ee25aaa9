import type { Values } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import type { Batched } from "./batched";

/** What the checks need to know of the house. */
export type Context = {
  /** IANA zone of a practice; undefined where it is not known, as when no practice is named and practices differ. */
  zoneOf(practice: string | undefined): string | undefined;
  /** Keyed hash of a patient reference. */
  pseudonym(practice: string, reference: string): string;
  readonly now: Date;
};

/** Finds the visit of a row that has no session_id; the canal is among the row's values. */
export type Match = {
  readonly practice?: string;
  readonly chair?: string;
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly until?: string;
  /** By ISO 3950. */
  readonly tooth?: string;
  /** So many minutes beside a visit still count as within it. */
  readonly minutes: number;
};

/** A row that the checks found right; only recorded columns are there. */
export type GoodRow = {
  readonly verdict: "good";
  readonly line: number;
  readonly values: Values;
  /** Of a row that names no visit. */
  readonly match?: Match;
};

/** A row with something wrong in it. */
export type HeldRow = {
  readonly verdict: "held";
  readonly line: number;
  /** Its key as a person reads it: "V-1 MB 2". */
  readonly key: string;
  readonly practice?: string;
  readonly session_id?: string;
  /** Only where the name is right; empty for the whole tooth. */
  readonly canal?: string;
  /** Known columns as read, the patient hashed already. */
  readonly raw: Readonly<Record<string, string>>;
  readonly reasons: readonly Reason[];
};

/** One table of a file. Its rows are exhausted before the next sheet is asked for. */
export type Sheet = {
  /** The file; of a workbook "book.xlsx, sheet canals". */
  readonly name: string;
  readonly table: TableName;
  /** Header names that no field takes; they are not kept. */
  readonly ignored: readonly string[];
  readonly rows: Batched<GoodRow | HeldRow>;
};
