import type { Values } from "@/lib/records/column";
import type { Place } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import {
  differenceSentence,
  type FieldDifference,
  fieldDifferences,
  fieldsKept,
} from "./correction-differences";
import { moment } from "./day";
import { count } from "./quantity";

type ImportPlace = Place & { readonly importId: number };

/** Two versions of a row, as they are kept. */
export type DifferenceInput = {
  readonly id: string;
  readonly table: TableName;
  readonly practice: string;
  readonly key: string;
  readonly zone: string;
  readonly accepted: Values;
  readonly newer: Values;
  readonly broken: boolean;
  readonly from: ImportPlace;
  readonly first: ImportPlace;
};

export type DifferenceLine = {
  readonly id: string;
  readonly row: string;
  readonly practice: string;
  readonly fields: readonly FieldDifference[];
  /** What the newer version does not say and what therefore stays; empty where it says all. */
  readonly kept: string;
  readonly newerFrom: string;
  readonly firstFrom: string;
  /** Why it cannot be taken as it is; null where it can. */
  readonly cannot: string | null;
};

/** A newer version beside the accepted one, field by field. */
export function differenceLine(row: DifferenceInput): DifferenceLine {
  const kept = fieldsKept(row.table, row.accepted, row.newer, row.zone);
  return {
    id: row.id,
    row: `${row.table} ${row.key}`,
    practice: row.practice,
    fields: fieldDifferences(row.table, row.accepted, row.newer, row.zone),
    kept:
      kept.length === 0
        ? ""
        : `The newer version does not say, and these stay: ${kept.join("; ")}.`,
    newerFrom: place(row.from),
    firstFrom: place(row.first),
    cannot: row.broken
      ? "It cannot be taken: together with what it does not say it would break a rule of the format, as a visit that ends before it starts. Correct it at its source."
      : null,
  };
}

/** A correction as it is kept. */
export type CorrectionInput = {
  readonly id: number;
  readonly table: TableName;
  readonly practice: string;
  readonly zone: string;
  readonly key: string;
  readonly before: Values;
  readonly after: Values;
  readonly rule: "asked" | "newer";
  readonly by: string;
  readonly at: Date;
  readonly undoneBy: string | null;
  readonly undoneAt: Date | null;
};

export type CorrectionLine = {
  readonly id: number;
  readonly row: string;
  readonly practice: string;
  readonly fields: readonly FieldDifference[];
  readonly taken: string;
  /** Who took it back and when; null while it stands. */
  readonly takenBack: string | null;
};

/** A correction that was made, in words. */
export function correctionLine(row: CorrectionInput): CorrectionLine {
  return {
    id: row.id,
    row: `${row.table} ${row.key}`,
    practice: row.practice,
    fields: fieldDifferences(row.table, row.before, row.after, row.zone),
    taken: `${moment(new Date(row.at), row.zone)}, by ${byWhom(row)}`,
    takenBack:
      row.undoneAt === null
        ? null
        : `Taken back ${moment(new Date(row.undoneAt), row.zone)} by ${row.undoneBy}`,
  };
}

/** "Corrected on 3 Jul 2026, 09:10 by N. Keeper: volume was 4.5 mL, now 5 mL." */
export function correctionSentence(row: CorrectionInput): string {
  const fields = fieldDifferences(row.table, row.before, row.after, row.zone);
  return `${row.table} ${row.key}: corrected on ${moment(new Date(row.at), row.zone)} by ${byWhom(row)}; ${differenceSentence(fields)}.`;
}

function byWhom({ rule, by }: CorrectionInput): string {
  return rule === "newer" ? "the practice's rule that the newer version stands" : by;
}

function place({ file, line, importId }: ImportPlace): string {
  return `${file}, line ${count(line)} (import ${importId})`;
}
