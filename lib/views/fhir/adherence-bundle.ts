import type * as r4 from "fhir/r4";
import type { Figure } from "@/lib/audit/figure";
import type { AdherenceReport } from "../adherence-report";
import { absent } from "./absent";
import { identifierSystem } from "./addresses";
import { type Entry, entryOf } from "./entry-of";
import { extensionDefinitions } from "./extension-definitions";
import { practiceReports, type Reported, subjectReports } from "./figure-reports";
import { maskedAsFigure } from "./masked-as-figure";
import { canonicalOfMeasure } from "./measure-identity";
import { overallReports } from "./overall-reports";
import { labelAsPractitioner, practiceAsOrganization } from "./parties";
import { peopleReports } from "./people-reports";

export type BundleWith = {
  /** Figures by practice of measures that the report does not hold: medians, separations. */
  readonly further?: readonly Figure[];
  /** Figures by clinician under labels drawn anew; the label is all that is said of whose they are. */
  readonly clinicians?: readonly { readonly label: string; readonly figures: readonly Figure[] }[];
};

/**
 * The report as an HL7 FHIR R4 Bundle: its measures, a report for each of them and practice, the practices, and what the
 * extensions of our own mean. The same report has the same bundle.
 *
 * @param fingerprint SHA-256 of the canonical report, in hexadecimal
 */
export function adherenceBundle(
  report: AdherenceReport,
  fingerprint: string,
  { further = [], clinicians = [] }: BundleWith = {},
): r4.Bundle<r4.FhirResource> {
  const figures = [
    ...report.criteria.flatMap(({ lines }) => lines.map(({ figure }) => maskedAsFigure(figure))),
    ...further,
  ];
  const { period } = report;
  const organizations = new Map(
    practicesIn(report, figures).map((code) => [code, entryOf(practiceAsOrganization(code))]),
  );
  const addressOf = (practice: string) => organizations.get(practice)?.fullUrl ?? "";
  const labelled = clinicians.map((one) => ({
    ...one,
    entry: entryOf(labelAsPractitioner(one.label)),
  }));
  const reported = [
    practiceReports(figures, { period, addressOf }),
    overallReports(report, addressOf),
    peopleReports(report, addressOf),
    ...labelled.map((one) => subjectReports(one.figures, period, one.entry.fullUrl)),
  ];
  return {
    resourceType: "Bundle",
    meta: { tag: [{ system: identifierSystem("software"), code: report.software }] },
    identifier: { system: identifierSystem("report-fingerprint"), value: fingerprint },
    type: "collection",
    ...(report.cutOff
      ? { timestamp: report.cutOff }
      : { _timestamp: { extension: [absent("unknown")] } }),
    entry: [
      ...extensionDefinitions.map((one) => entryOf(one)),
      ...measuresOf(reported),
      ...organizations.values(),
      ...labelled.map(({ entry }) => entry),
      ...reported.flatMap(({ reports }) => reports.map((one) => entryOf(one))),
    ],
  };
}

/** Every measure that is reported, once in each of its versions. */
function measuresOf(reported: readonly Reported[]): Entry[] {
  const all = reported.flatMap(({ measures }) => measures);
  const once = new Map(all.map((measure) => [canonicalOfMeasure(measure), measure]));
  return [...once.values()].map((measure) => entryOf(measure));
}

function practicesIn({ people, composites }: AdherenceReport, figures: readonly Figure[]) {
  const abouts = [...figures, ...composites].map(({ about }) => about);
  const named = abouts.flatMap((about) => (about.kind === "practice" ? [about.code] : []));
  return [...new Set([...people.map(({ practice }) => practice), ...named])].sort();
}
