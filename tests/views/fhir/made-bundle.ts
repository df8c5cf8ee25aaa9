import type * as r4 from "fhir/r4";
import { compositeOf } from "@/lib/audit/composite";
import { nothingMasked } from "@/lib/audit/disclosure/report-masks";
import type { Figure } from "@/lib/audit/figure";
import type { ClusterCounts, RateTally, Subject } from "@/lib/measures/tally";
import { quarter } from "@/lib/records/period";
import { type AdherenceParts, adherenceReportOf } from "@/lib/views/adherence-report";
import { adherenceBundle, type BundleWith } from "@/lib/views/fhir/adherence-bundle";
import { medianFigure, rateFigure } from "../made-figure";
import { measured } from "../measured";

export const fingerprint = "0123456789abcdef".repeat(4);
const oak = { kind: "practice", code: "OAK" } as const;
const elm = { kind: "practice", code: "ELM" } as const;

/** Of a chair, and of all chairs: twenty visits of ten patients, two each, of whom eight had both met and two one. */
const ten: ClusterCounts = {
  ...{ clusters: 10, events: 18, units: 20 },
  ...{ eventsSquared: 34, eventsByUnits: 36, unitsSquared: 40 },
};

/** A criterion's figure with these counts. */
export function adherence(
  subject: Subject,
  criterion: string,
  given: Partial<RateTally> & Pick<RateTally, "population" | "numerator" | "denominator">,
) {
  const notRecorded = given.notRecorded ?? 0;
  return rateFigure({
    ...measured(`criterion/${criterion}`),
    subject,
    notMet: given.denominator - given.numerator - notRecorded,
    ...given,
  });
}

// 81 of 263 is a pair of Newcombe 1998 (Stat Med 17:857, table I), whose Wilson interval is published.
const isolation = {
  population: 300,
  excluded: { abandoned: 20, dressing: 10 },
  excepted: { "not-tolerated": 7 },
  notRecorded: 12,
  numerator: 81,
  denominator: 263,
};
const nothing = { population: 0, numerator: 0, denominator: 0 };
const chair = (code: string): Subject => ({ kind: "chair", code, practice: "OAK" });

export const figures = [
  adherence({ kind: "group" }, "isolation", isolation),
  adherence(elm, "isolation", nothing),
  adherence(oak, "isolation", isolation),
  adherence(elm, "line-check", nothing),
  adherence(oak, "line-check", {
    ...{ population: 22, excepted: { "equipment-failure": 2 } },
    ...{ numerator: 18, denominator: 20, clusters: ten },
  }),
  adherence(chair("OAK-1"), "line-check", { population: 12, numerator: 11, denominator: 12 }),
  adherence(chair("OAK-2"), "line-check", {
    ...{ population: 10, excepted: { "equipment-failure": 2 } },
    ...{ numerator: 7, denominator: 8, notRecorded: 1 },
  }),
];

/** Medians of one practice, none of the other; separations. */
export const further: readonly Figure[] = [
  medianFigure({
    ...{ measure: "volume", subject: oak, population: 14, excluded: { dressing: 3 } },
    ...{ notRecorded: 1, n: 10, median: 18.6 },
  }),
  medianFigure({
    ...{ measure: "irrigation-time", subject: elm, population: 5, notRecorded: 5 },
    ...{ n: 0, median: null, quartiles: null, bounds: null },
  }),
  rateFigure({
    ...{ measure: "separation-per-canal", subject: oak, population: 100, notRecorded: 4 },
    ...{ numerator: 1, denominator: 96, notMet: 95 },
  }),
];

const twenty = { met: 12, of: 20, notRecorded: 3 };

export const parts: AdherenceParts = {
  period: quarter(2026, 3),
  practices: ["ELM", "OAK"],
  wholeGroup: true,
  masks: nothingMasked,
  figures,
  changes: [],
  composites: [
    compositeOf({
      ...{ subject: oak, period: quarter(2026, 3), opportunities: twenty, visits: twenty },
      clusters: {
        ...{ clusters: 20, events: 12, units: 20 },
        ...{ eventsSquared: 12, eventsByUnits: 12, unitsSquared: 20 },
      },
      byCriterion: [{ criterion: "isolation", ...twenty }],
    }),
  ],
  people: [
    { practice: "ELM", visits: 5, patients: 3, clinicians: 0 },
    { practice: "OAK", visits: 300, patients: 210, clinicians: 6 },
  ],
  published: new Date("2026-10-02T08:30:00Z"),
  version: "0.1.0",
};

/** The bundle of the made report, or of one that differs from it. */
export function madeBundle(
  other: Partial<AdherenceParts> = {},
  given: BundleWith = { further },
): r4.Bundle<r4.FhirResource> {
  return adherenceBundle(adherenceReportOf({ ...parts, ...other }), fingerprint, given);
}
