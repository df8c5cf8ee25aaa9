import { fewestPeople } from "@/lib/audit/disclosure/few-people";
import { maskedWhy, type PublishedScores } from "@/lib/audit/disclosure/masked-figure";
import type { ByReason, Subject } from "@/lib/measures/tally";
import { type AdherenceCells, maskedCells, maskedScoreCells } from "./adherence-columns";
import type { AdherenceCriterion, AdherenceReport, ReportedLine } from "./adherence-report";
import { noVerdict, scoreNames } from "./composite";
import { criterionPopulation } from "./criterion-population";

const maskedPeople = `masked: fewer than ${fewestPeople}, here or in what could be worked out from it`;

/**
 * The report as records, the same in every file: `row` says what a record is: figure, overall (score), people, about or caution.
 *
 * @param fingerprint SHA-256 of the canonical report, in hexadecimal
 */
export function adherenceRows(report: AdherenceReport, fingerprint: string): AdherenceCells[] {
  return [
    ...report.criteria.flatMap((one) => one.lines.map((line) => figureRow(report, one, line))),
    ...report.composites.flatMap((one) => compositeRows(report, one)),
    ...peopleRows(report),
    ...aboutRows(report, fingerprint),
    ...report.cautions.map((says): AdherenceCells => ({ row: "caution", says })),
  ];
}

function figureRow(
  report: AdherenceReport,
  of: AdherenceCriterion,
  line: ReportedLine,
): AdherenceCells {
  const known: AdherenceCells = {
    row: "figure",
    criterion: of.criterion.id,
    title: of.criterion.title,
    ...subjectCells(line.figure.about),
    ...periodCells(report),
    definition: of.definition,
    population_in_words: criterionPopulation(of.criterion),
    unit: line.figure.unit,
    target: of.criterion.target,
    target_set_by: of.criterion.targetSource,
  };
  if (line.masked) return { ...known, ...maskedCells, why_no_rate: maskedWhy, says: maskedWhy };
  const { figure } = line;
  return {
    ...known,
    population: figure.population,
    left_out: line.leftOut,
    left_out_by_reason: reasons(figure.excluded),
    eligible: line.eligible,
    excepted: line.excepted,
    excepted_by_reason: reasons(figure.excepted),
    met: figure.numerator,
    not_met: figure.notMet,
    not_recorded: figure.notRecorded,
    counted: figure.denominator,
    rate: figure.estimate,
    interval_lower: figure.interval?.lower ?? null,
    interval_upper: figure.interval?.upper ?? null,
    interval_level: figure.interval?.level ?? null,
    interval_method: figure.interval?.method ?? null,
    rate_if_unrecorded_not_met: figure.bounds?.[0] ?? null,
    rate_if_unrecorded_met: figure.bounds?.[1] ?? null,
    in_these_records: line.inTheseRecords.words,
    beyond_chance: line.beyondChance.words,
    why_no_rate: figure.estimate === null ? (figure.why ?? null) : null,
    clustered_lower: figure.clustered?.lower ?? null,
    clustered_upper: figure.clustered?.upper ?? null,
    clustered_method: figure.clustered?.method ?? null,
    design_effect: figure.clustered?.designEffect ?? null,
    interval_to_read: line.read,
    change: line.change,
  };
}

/** Both overall scores of a subject. */
function compositeRows(report: AdherenceReport, of: PublishedScores): AdherenceCells[] {
  return (["opportunities", "visits"] as const).map((score): AdherenceCells => {
    const known: AdherenceCells = {
      row: "overall",
      title: scoreNames[score],
      ...subjectCells(of.about),
      ...periodCells(report),
      definition: report.overall.about.join(" "),
      unit: score === "visits" ? "visit" : "opportunity",
    };
    if (of.masked) return { ...known, ...maskedScoreCells, says: maskedWhy };
    const { met, of: counted, notRecorded, estimate, interval } = of[score];
    return {
      ...known,
      met,
      not_met: counted - met - notRecorded,
      not_recorded: notRecorded,
      counted,
      rate: estimate,
      interval_lower: interval?.lower ?? null,
      interval_upper: interval?.upper ?? null,
      interval_level: interval?.level ?? null,
      interval_method: interval?.method ?? null,
      says: noVerdict,
    };
  });
}

function peopleRows(report: AdherenceReport): AdherenceCells[] {
  return report.people.flatMap(({ practice, patients, clinicians }) =>
    [
      { unit: "patient", people: patients },
      { unit: "clinician", people: clinicians },
    ].map(
      ({ unit, people }): AdherenceCells => ({
        row: "people",
        about: "practice",
        practice,
        ...periodCells(report),
        unit,
        population: people ?? "masked",
        says: people === null ? maskedPeople : null,
      }),
    ),
  );
}

function aboutRows(report: AdherenceReport, fingerprint: string): AdherenceCells[] {
  const rows: [string, string | null][] = [
    ["period", report.period.words],
    ["scope", report.scope],
    ["data cut-off (when the last import was published)", report.cutOff],
    ["software", report.software],
    [
      "fingerprint (SHA-256 of this report in canonical JSON, RFC 8785, numbers to 12 significant digits)",
      fingerprint,
    ],
    [
      "rate",
      "met ÷ counted; counted = eligible − excepted; what is not recorded is counted, and told apart from not met",
    ],
    ["in_these_records", "whether the target was reached in these records"],
    ["beyond_chance", "whether that is settled beyond what chance brings at this number of units"],
    [
      "clustered_lower, clustered_upper",
      "the interval that allows for units of one patient resembling each other, at the level of interval_level; empty where units sit in no patient or too few patients are there; it is the one to read where it is there",
    ],
    [
      "design_effect",
      "how many times the variance is that of independent units; empty with none or all of them met, when patients are the units of the interval",
    ],
    [
      "interval_to_read",
      "the same in words: which interval to read and how much wider it is than the plain one",
    ],
    [
      "overall",
      "two scores over all criteria that count at a visit: opportunities met, whose clustered interval has visits as clusters and not patients, and visits with everything met",
    ],
    [
      "change",
      "the rate less that of the period before of the same length, in percentage points, with its 95 % interval (Newcombe 1998, method 10) and whether so many units settle it",
    ],
  ];
  return rows.map(([title, says]) => ({
    row: "about",
    title,
    ...periodCells(report),
    says: says ?? "no import yet",
  }));
}

function periodCells({ period }: AdherenceReport): AdherenceCells {
  return { period: period.name, from: period.from, to: period.to };
}

function subjectCells(about: Subject): AdherenceCells {
  if (about.kind === "practice") return { about: "practice", practice: about.code };
  if (about.kind === "chair")
    return { about: "chair", practice: about.practice, chair: about.code };
  return { about: about.kind };
}

function reasons(by: ByReason): string {
  return Object.entries(by)
    .map(([reason, units]) => `${reason} ${units}`)
    .join("; ");
}
