import { period } from "@/lib/records/period";
import { moment } from "./day";
import { periodWords } from "./period-words";

/** An export as it was kept. */
export type ExportInput = {
  readonly id: number;
  readonly what: string;
  readonly format: string;
  readonly period: string;
  /** Codes of the practices; none is the whole group. */
  readonly practices: readonly string[];
  readonly by: string;
  readonly at: Date;
  readonly sha256: string;
  readonly fingerprint: string | null;
};

export type ExportLine = {
  readonly id: number;
  readonly what: string;
  readonly period: string;
  readonly scope: string;
  readonly by: string;
  readonly at: string;
  readonly sha256: string;
  /** Empty where the export has none. */
  readonly fingerprint: string;
};

/** What was exported before, in words; times in the zone of the reader's practice. */
export function exportLines(exports: readonly ExportInput[], zone: string): ExportLine[] {
  return exports.map((one) => {
    const of = period(one.period);
    return {
      id: one.id,
      what: `${one.what}, ${one.format.toUpperCase()}`,
      period: of ? periodWords(of) : one.period,
      scope: one.practices.length === 0 ? "the whole group" : one.practices.join(", "),
      by: one.by,
      at: moment(one.at, zone),
      sha256: one.sha256,
      fingerprint: one.fingerprint ?? "",
    };
  });
}
