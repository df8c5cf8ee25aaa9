import type * as r4 from "fhir/r4";
import type { Score } from "@/lib/audit/composite";
import { countsOverall } from "@/lib/protocol/overall";
import type { AdherenceReport } from "../adherence-report";
import { scoreNames } from "../composite";
import { absent } from "./absent";
import { canonicalOf } from "./addresses";
import { coded } from "./coded";
import { extensionUrls } from "./extension-urls";
import { apart, type Reported } from "./figure-reports";
import { canonicalOfMeasure, identified } from "./measure-identity";
import { populationInWords } from "./population-in-words";
import { population } from "./populations";
import { intervalExtension, unity } from "./score";

const scores = ["opportunities", "visits"] as const;
type ScoreName = (typeof scores)[number];

/** Both overall scores of each practice: composites of the criteria that count. */
export function overallReports(
  report: AdherenceReport,
  addressOf: (practice: string) => string,
): Reported {
  return apart(
    report.composites.flatMap((figure) => {
      const { about } = figure;
      if (about.kind !== "practice") return [];
      return scores.map((name) => {
        const measure = overallMeasure(name, report);
        return {
          measure,
          report: {
            resourceType: "MeasureReport" as const,
            status: "complete" as const,
            type: "summary" as const,
            measure: canonicalOfMeasure(measure),
            reporter: { reference: addressOf(about.code) },
            period: { start: report.period.from, end: report.period.to },
            improvementNotation: measure.improvementNotation,
            group: [groupOf(figure[name], name)],
          },
        };
      });
    }),
  );
}

function overallMeasure(name: ScoreName, { criteria, overall }: AdherenceReport): r4.Measure {
  const visits = name === "visits";
  const [opportunity = "", everything = ""] = overall.about;
  const counted = visits ? "Visits with an opportunity." : opportunity;
  return identified(`overall-${name}`, {
    title: scoreNames[name],
    subjectCodeableConcept: { text: visits ? "visit" : "criterion at a visit" },
    description: overall.about.join(" "),
    relatedArtifact: criteria
      .filter(({ criterion }) => countsOverall(criterion))
      .map(({ criterion }) => ({
        type: "composed-of" as const,
        resource: canonicalOf("Measure", `criterion-${criterion.id}`),
      })),
    scoring: coded("measure-scoring", "proportion"),
    compositeScoring: coded("composite-measure-scoring", visits ? "all-or-nothing" : "opportunity"),
    type: [coded("measure-type", "composite")],
    improvementNotation: coded("measure-improvement-notation", "increase"),
    group: [
      {
        population: [
          populationInWords("initial-population", counted),
          populationInWords("denominator", "The whole initial population."),
          populationInWords("numerator", visits ? everything : "Opportunities that were met."),
        ],
      },
    ],
  });
}

/** @param score null where it is masked */
function groupOf(score: Score | null, name: ScoreName): r4.MeasureReportGroup {
  if (score === null)
    return {
      population: (["initial-population", "denominator", "numerator"] as const).map((code) =>
        population(code, null),
      ),
      measureScore: { extension: [absent("masked")] },
    };
  const { met, of, notRecorded, estimate, interval } = score;
  return {
    extension: [{ url: extensionUrls.countedNotRecorded, valueInteger: notRecorded }],
    population: [
      population("initial-population", of),
      population("denominator", of),
      population("numerator", met),
    ],
    measureScore:
      estimate === null
        ? { extension: [absent("not-applicable")] }
        : {
            // Opportunities of one visit resemble each other; visits stand alone.
            extension: [
              intervalExtension(name === "visits" ? "plain" : "clustered", interval ?? "unknown"),
            ],
            value: estimate,
            ...unity,
          },
  };
}
