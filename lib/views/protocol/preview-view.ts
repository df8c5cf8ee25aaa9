import { rateOfCounts } from "@/lib/audit/rate-of-counts";
import type { ByReason } from "@/lib/measures/tally";
import type { UnitKind } from "@/lib/protocol/criterion";
import { day } from "../day";
import { count, percent } from "../quantity";
import { ownReasonWords, unitWords } from "./code-words";
import type { OwnWords } from "./own-words";

/** What a definition makes of the units of a period. */
export type JudgedCounts = {
  readonly population: number;
  readonly met: number;
  readonly notMet: number;
  readonly notRecorded: number;
  readonly excluded: ByReason;
  readonly excepted: ByReason;
};

export type JudgedExample = {
  readonly outcome: "met" | "not met" | "not recorded" | "excepted" | "excluded";
  readonly reason: string | null;
  readonly practice: string;
  readonly sessionId: string | null;
  readonly chair: string;
  readonly day: string;
  readonly tooth: string | null;
  readonly canal: string | null;
  readonly seq: number | null;
};

/** What a definition would have done to a past quarter. */
export type PreviewView = {
  /** The whole of it in a sentence. */
  readonly finding: string;
  /** The share met, as edited and as in force: what stays within sight where there is little room. */
  readonly short: string;
  readonly rows: readonly {
    readonly words: string;
    readonly proposed: string;
    readonly now: string;
  }[];
  /** Is there a version in force to stand beside it. */
  readonly beside: boolean;
  readonly examples: readonly ExampleGroup[];
};

export type ExampleGroup = {
  readonly outcome: string;
  readonly mark: "met" | "missed" | "excepted" | "missing" | "open";
  readonly items: readonly { readonly words: string; readonly address: string | null }[];
};

export function previewView(of: {
  readonly unit: UnitKind;
  readonly period: string;
  readonly proposed: JudgedCounts;
  /** Null where no version is in force. */
  readonly now: JudgedCounts | null;
  readonly examples: readonly JudgedExample[];
  readonly addressOf: (example: JudgedExample) => string | null;
  readonly own: OwnWords;
}): PreviewView {
  const { proposed, now, own, unit } = of;
  const words = unitWords[unit];
  const several = (units: number) => `${count(units)} ${units === 1 ? words.one : words.several}`;
  return {
    finding: `${of.period}: it would have applied to ${several(eligible(proposed))}${shareWords(proposed)}.`,
    short: shortWords(proposed, now),
    beside: now !== null,
    rows: rowsOf(proposed, now, own),
    examples: outcomes.flatMap(({ outcome, mark }) => {
      const items = of.examples.filter((one) => one.outcome === outcome);
      return items.length > 0
        ? [
            {
              outcome: outcome === "excluded" ? "left out" : outcome,
              mark,
              items: items.map((one) => ({
                words: exampleWords(one, own),
                address: of.addressOf(one),
              })),
            },
          ]
        : [];
    }),
  };
}

function rowsOf(proposed: JudgedCounts, now: JudgedCounts | null, own: OwnWords) {
  const row = (words: string, of: (counts: JudgedCounts) => string) => ({
    words,
    proposed: of(proposed),
    now: now ? of(now) : "",
  });
  const reasons = (kind: "excluded" | "excepted") => [
    ...new Set([...Object.keys(proposed[kind]), ...Object.keys(now?.[kind] ?? {})]),
  ];
  return [
    row("Looked at", ({ population }) => count(population)),
    ...reasons("excluded").map((reason) =>
      row(`Left out: ${ownReasonWords(reason, own)}`, ({ excluded }) =>
        count(excluded[reason] ?? 0),
      ),
    ),
    row("Eligible", (counts) => count(eligible(counts))),
    row("Met", ({ met }) => count(met)),
    row("Not met", ({ notMet }) => count(notMet)),
    ...reasons("excepted").map((reason) =>
      row(`Excepted: ${ownReasonWords(reason, own)}`, ({ excepted }) =>
        count(excepted[reason] ?? 0),
      ),
    ),
    row("Not recorded", ({ notRecorded }) => count(notRecorded)),
    row("Rate", (counts) => {
      const rate = rateOf(counts);
      return rate ? percent(rate.estimate) : "nothing to estimate";
    }),
    row("95 % interval", (counts) => {
      const rate = rateOf(counts);
      return rate ? intervalWords(rate.interval) : "none";
    }),
  ];
}

function shortWords(proposed: JudgedCounts, now: JudgedCounts | null): string {
  const of = (counts: JudgedCounts) => {
    const rate = rateOf(counts);
    return rate
      ? `met ${count(counts.met)} of ${count(demanded(counts))} (${percent(rate.estimate)})`
      : "nothing to count";
  };
  return `As edited: ${of(proposed)}${now ? `; in force: ${of(now)}` : ""}`;
}

function shareWords(counts: JudgedCounts): string {
  const rate = rateOf(counts);
  if (!rate) return "";
  const of =
    sum(counts.excepted) > 0
      ? `of the ${count(demanded(counts))} that are not excepted`
      : "of them";
  return ` and been met in ${count(counts.met)} ${of} (${percent(rate.estimate)}, 95 % interval ${intervalWords(rate.interval)})`;
}

/** Of all that is demanded, what is not recorded among it. */
function rateOf(counts: JudgedCounts) {
  return rateOfCounts(counts.met, demanded(counts));
}

function demanded(counts: JudgedCounts): number {
  return counts.met + counts.notMet + counts.notRecorded;
}

function eligible(counts: JudgedCounts): number {
  return demanded(counts) + sum(counts.excepted);
}

function sum(by: ByReason): number {
  return Object.values(by).reduce((total, units) => total + units, 0);
}

function intervalWords({ lower, upper }: { lower: number; upper: number }): string {
  return `${percent(lower)} to ${percent(upper)}`;
}

/** "3 Jul 2026, tooth 26, canal MB1, 2: allergy" */
function exampleWords(one: JudgedExample, own: OwnWords): string {
  const where = [
    one.practice,
    day(one.day),
    one.sessionId === null ? `chair ${one.chair}` : "",
    one.tooth ? `tooth ${one.tooth}` : "",
    one.canal ? `canal ${one.canal}` : "",
    one.seq === null ? "" : `number ${one.seq}`,
  ].filter(Boolean);
  return `${where.join(", ")}${one.reason ? `: ${ownReasonWords(one.reason, own)}` : ""}`;
}

const outcomes = [
  { outcome: "met", mark: "met" },
  { outcome: "not met", mark: "missed" },
  { outcome: "excepted", mark: "excepted" },
  { outcome: "not recorded", mark: "missing" },
  { outcome: "excluded", mark: "open" },
] as const;
