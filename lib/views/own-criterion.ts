import type { Comparison } from "@/lib/audit/comparison";
import type { RateFigure } from "@/lib/audit/figure";
import type { Criterion } from "@/lib/protocol/criterion";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import { targetWords } from "./adherence-report";
import { clusteredWords } from "./clustered-words";
import { day } from "./day";
import { evidenceWords } from "./evidence-words";
import { explanationAddress } from "./explanation-address";
import { intervalWords } from "./figure-line";
import { definitionOf, unitName } from "./measure-words";
import { ownComparison } from "./own-comparison";
import { ownFinding } from "./own-finding";
import { ownSeen } from "./own-seen";
import { count } from "./quantity";
import { reasonWords } from "./reason-words";
import { beyondChance, inTheseRecords, type Verdict } from "./verdict-words";
import { visitAddress } from "./visit-address";

/** One unit that counts against a criterion, as a line of a list. */
export type MissLine = {
  readonly id: string;
  readonly href: string;
  /** The page that says why it counts so. */
  readonly why: string;
  readonly day: string;
  readonly unit: string;
  readonly mark: "missed" | "missing";
  readonly state: string;
  readonly evidence: string;
};

export type OwnCriterion = {
  readonly id: string;
  readonly title: string;
  readonly statement: string;
  readonly definition: string;
  readonly target: string;
  readonly finding: string;
  readonly comparison: string;
  readonly interval: string;
  /** Which interval to read, and how much wider it is. */
  readonly read: string;
  /** What could have been seen; null where it cannot be told. */
  readonly seen: string | null;
  readonly note: string | null;
  /** Met, not met, excepted, not recorded; then what was left out. */
  readonly counts: readonly { readonly mark: string; readonly words: string }[];
  readonly leftOut: string;
  readonly verdicts: readonly { readonly about: string; readonly verdict: Verdict }[];
  readonly misses: readonly MissLine[];
  readonly missCount: number;
  readonly whatToDo: readonly string[];
};

export type MissedUnit = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
  readonly canal: string;
  readonly missing: boolean;
  readonly seq: number | null;
  readonly evidence: Pick<JudgedUnit, "fields" | "lists">;
};

/** A clinician's own criterion: what it comes to, which units missed it and what can be done about each. */
export function ownCriterion(
  figure: RateFigure,
  comparison: Comparison,
  note: string | null,
  misses: readonly MissedUnit[],
): OwnCriterion {
  const criterion = figure.criterion;
  if (!criterion) throw new RangeError(`no criterion: ${figure.measure}`);
  const excluded = Object.entries(figure.excluded).map(
    ([reason, units]) => `${count(units)} ${reasonWords(reason)}`,
  );
  return {
    id: criterion.id,
    title: criterion.title,
    statement: criterion.statement,
    definition: definitionOf(figure),
    target: `Target ${targetWords(criterion)}`,
    finding: ownFinding(figure),
    comparison: figure.estimate === null ? "" : ownComparison(figure, comparison),
    interval: intervalWords(figure, figure.interval),
    read: clusteredWords(figure),
    seen: ownSeen(figure, comparison),
    note,
    counts: countsOf(figure),
    leftOut: `${count(figure.population)} ${unitName(figure, figure.population)} in all${excluded.length > 0 ? `; left out: ${excluded.join(", ")}` : ""}.`,
    verdicts: [
      { about: "In these records", verdict: inTheseRecords(figure) },
      { about: "Beyond chance", verdict: beyondChance(figure) },
    ],
    misses: misses.map((miss) => missLine(criterion, miss)),
    missCount: figure.notMet + figure.notRecorded,
    whatToDo: whatToDo(criterion, figure),
  };
}

function countsOf(figure: RateFigure): OwnCriterion["counts"] {
  const excepted = Object.entries(figure.excepted);
  const units = excepted.reduce((total, [, some]) => total + some, 0);
  const reasons = excepted
    .map(([reason, some]) => `${reasonWords(reason)} ${count(some)}`)
    .join(", ");
  return [
    { mark: "met", words: `met ${count(figure.numerator)}` },
    { mark: "missed", words: `not met ${count(figure.notMet)}` },
    { mark: "excepted", words: `excepted ${count(units)}${reasons ? ` (${reasons})` : ""}` },
    { mark: "missing", words: `not recorded ${count(figure.notRecorded)}` },
  ];
}

function missLine(criterion: Criterion, miss: MissedUnit): MissLine {
  const unit =
    miss.canal === ""
      ? `visit ${miss.sessionId}, tooth ${miss.tooth}`
      : `visit ${miss.sessionId}, tooth ${miss.tooth}, canal ${miss.canal}${miss.seq === null ? "" : `, number ${miss.seq}`}`;
  return {
    id: `${miss.practice}/${miss.sessionId}/${miss.canal}/${miss.seq ?? ""}`,
    href: visitAddress(miss.practice, miss.sessionId),
    why: explanationAddress(criterion.id, { ...miss, chair: "", canal: miss.canal || null }),
    day: day(miss.day),
    unit,
    mark: miss.missing ? "missing" : "missed",
    state: miss.missing ? "not recorded" : "not met",
    evidence: evidenceWords(criterion, miss.evidence).join("; "),
  };
}

function whatToDo(criterion: Criterion, figure: RateFigure): string[] {
  const source = "where the visit was written down and bring the file in again";
  const missing = `Not recorded: if it was done, record it ${source}; nothing is known of these units either way.`;
  const missed =
    criterion.exceptions === null
      ? `Not met: the demand is "${criterion.statement}" Complete the record ${source}; no exception is foreseen.`
      : `Not met: the demand is "${criterion.statement}" Where a record is wrong, correct it ${source}; where there was a good reason, open the unit and enter the exception.`;
  return [...(figure.notMet > 0 ? [missed] : []), ...(figure.notRecorded > 0 ? [missing] : [])];
}
