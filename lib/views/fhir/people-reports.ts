import type * as r4 from "fhir/r4";
import { fewestPeople } from "@/lib/audit/disclosure/few-people";
import type { AdherenceReport } from "../adherence-report";
import { coded } from "./coded";
import { apart, type Reported } from "./figure-reports";
import { canonicalOfMeasure, identified } from "./measure-identity";
import { populationInWords } from "./population-in-words";
import { population } from "./populations";

const people = ["patients", "clinicians"] as const;

/** How many people stand behind the records of each practice; a masked count is said to be masked. */
export function peopleReports(
  report: AdherenceReport,
  addressOf: (practice: string) => string,
): Reported {
  return apart(
    report.people.flatMap((one) =>
      people.map((who) => {
        const measure = peopleMeasure(who);
        return {
          measure,
          report: {
            resourceType: "MeasureReport" as const,
            status: "complete" as const,
            type: "summary" as const,
            measure: canonicalOfMeasure(measure),
            reporter: { reference: addressOf(one.practice) },
            period: { start: report.period.from, end: report.period.to },
            group: [{ population: [population("initial-population", one[who])] }],
          },
        };
      }),
    ),
  );
}

function peopleMeasure(who: (typeof people)[number]): r4.Measure {
  const words = `${who === "patients" ? "Patients" : "Clinicians"} with a visit in the period.`;
  return identified(`${who}-behind-the-records`, {
    title: `${who === "patients" ? "Patients" : "Clinicians"} behind the records`,
    subjectCodeableConcept: { text: who === "patients" ? "patient" : "clinician" },
    description: `${words} A count from one to ${fewestPeople - 1} is masked.`,
    scoring: coded("measure-scoring", "cohort"),
    group: [{ population: [populationInWords("initial-population", words)] }],
  });
}
