import type * as r4 from "fhir/r4";
import type { Figure } from "@/lib/audit/figure";
import type { AdherenceReport } from "../adherence-report";
import { canonicalOfMeasure } from "./measure-identity";
import { notRecordedOf, populationsOf } from "./populations";
import { scoreOf } from "./score";

export type MeasureReportOf = {
  readonly measure: r4.Measure;
  readonly figure: Figure;
  readonly period: AdherenceReport["period"];
  /** Whose records they are, and who is spoken of; addresses of entries. */
  readonly reporter?: string;
  readonly subject?: string;
  /** The same figure by chair. */
  readonly chairs?: readonly Figure[];
};

/** A figure as the report of its measure: complete as to its status, a summary as to its type. */
export function measureReport(of: MeasureReportOf): r4.MeasureReport {
  const { measure, figure, period, reporter, subject, chairs = [] } = of;
  return {
    resourceType: "MeasureReport",
    status: "complete",
    type: "summary",
    measure: canonicalOfMeasure(measure),
    ...(subject ? { subject: { reference: subject } } : {}),
    ...(reporter ? { reporter: { reference: reporter } } : {}),
    period: { start: period.from, end: period.to },
    ...(measure.improvementNotation ? { improvementNotation: measure.improvementNotation } : {}),
    group: [
      {
        ...counted(figure),
        ...(chairs.length > 0
          ? { stratifier: [{ code: [{ text: "chair" }], stratum: chairs.map(stratumOf) }] }
          : {}),
      },
    ],
  };
}

function counted(figure: Figure) {
  return {
    extension: [notRecordedOf(figure)],
    population: populationsOf(figure),
    measureScore: scoreOf(figure),
  };
}

function stratumOf(figure: Figure): r4.MeasureReportGroupStratifierStratum {
  const { about } = figure;
  if (about.kind !== "chair") throw new RangeError("only chairs are told apart");
  return { ...counted(figure), value: { text: about.code } };
}
