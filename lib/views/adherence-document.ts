import { period as periodNamed } from "@/lib/records/period";
import type { AdherenceCriterion, AdherenceReport } from "./adherence-report";
import { noVerdict } from "./composite";
import { criteriaChart } from "./criteria-chart";
import { criterionPopulation } from "./criterion-population";
import type { DocumentBlock, DocumentPart, ReportDocument } from "./document/document";
import { overallTable } from "./document/overall-table";

/** The adherence report as a document: what an inspector reads, naming no clinician. @param fingerprint SHA-256 of the canonical report */
export function adherenceDocument(report: AdherenceReport, fingerprint: string): ReportDocument {
  const { period, scope, cutOffWords, software, criteria } = report;
  const title = `Adherence to protocol, ${period.words}`;
  return {
    title,
    over: scope,
    language: "en-GB",
    facts: [
      { name: "Period", words: `${period.words} (${period.from} to ${period.to})` },
      { name: "Scope", words: scope },
      { name: "Records as of", words: `${cutOffWords}, when files were last brought in` },
      { name: "Software", words: software },
      { name: "Fingerprint", words: fingerprint },
    ],
    summary: summaryOf(report),
    parts: [
      ...criteria.map(criterionPart),
      overallPart(report),
      peoplePart(report),
      {
        id: "cautions",
        title: "Before any figure is used",
        blocks: [{ kind: "list", items: report.cautions }],
      },
    ],
    foot: `${title}. ${software}. Fingerprint ${fingerprint.slice(0, 16)}.`,
  };
}

function summaryOf({ criteria, period }: AdherenceReport): DocumentBlock[] {
  const of = periodNamed(period.name);
  const wholes = criteria.flatMap(({ lines }) => lines[0]?.figure ?? []);
  return [
    {
      kind: "words",
      words:
        "Every record of the period is counted; nothing is sampled. A rate is the units met, of those eligible and not excepted; what is not recorded is among them and stands apart from what was not met. “In these records” says whether the target was reached; “beyond chance” whether that is settled at this number of units. No clinician is named, not even by code.",
    },
    ...(of ? [{ kind: "intervals", chart: criteriaChart(wholes, of) } as const] : []),
  ];
}

function criterionPart(of: AdherenceCriterion): DocumentPart {
  const { criterion, definition, targetWords, lines } = of;
  const changes = lines.filter(({ change }) => change !== "");
  return {
    id: criterion.id,
    title: criterion.title,
    note: `Target ${targetWords}`,
    wide: true,
    blocks: [
      {
        kind: "table",
        label: `${criterion.title}: figures`,
        columns: [
          { title: "Where", share: 1.3 },
          { title: "In all", numeric: true, share: 0.6 },
          { title: "Left out", share: 1.3 },
          { title: "Excepted", share: 1.1 },
          { title: "Met", numeric: true, share: 0.6 },
          { title: "Not met", numeric: true, share: 0.6 },
          { title: "Not recorded", numeric: true, share: 0.8 },
          { title: "Rate and interval", share: 2.2 },
          { title: "In these records", share: 1.1 },
          { title: "Beyond chance", share: 1.1 },
        ],
        rows: lines.map((line) => ({
          id: line.about,
          cells: [
            line.about,
            line.words.population,
            line.words.leftOut,
            line.words.excepted,
            line.words.met,
            line.words.notMet,
            line.words.notRecorded,
            [line.words.rate, line.words.interval, line.words.bounds].filter(Boolean).join("; "),
            line.inTheseRecords.words,
            line.beyondChance.words,
          ],
        })),
      },
      ...(changes.length > 0
        ? [
            {
              kind: "list",
              items: changes.map(({ about, change }) => `${about}: ${change}`),
            } as const,
          ]
        : []),
      { kind: "words", words: definition },
      {
        kind: "words",
        words: `Counted: ${criterionPopulation(criterion)} Source: ${criterion.source}`,
        soft: true,
      },
    ],
  };
}

function overallPart({ overall }: AdherenceReport): DocumentPart {
  return {
    id: "overall",
    title: "Overall",
    note: noVerdict,
    blocks: [
      overallTable(overall.rows),
      ...overall.about.map((words): DocumentBlock => ({ kind: "words", words, soft: true })),
    ],
  };
}

function peoplePart({ people }: AdherenceReport): DocumentPart {
  return {
    id: "people",
    title: "People behind the records",
    blocks: [
      {
        kind: "table",
        label: "People by practice",
        columns: [
          { title: "Practice" },
          { title: "Patients", numeric: true },
          { title: "Clinicians", numeric: true },
        ],
        rows: people.map((one) => ({
          id: one.practice,
          cells: [one.practice, one.patientWords, one.clinicianWords],
        })),
      },
    ],
  };
}
