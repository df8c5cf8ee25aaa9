import { spansIn } from "@/lib/protocol/may-begin";
import type { Protocol, Span } from "@/lib/protocol/protocol";
import type { Period } from "@/lib/records/period";
import { day } from "../day";
import { criterionState } from "./criterion-state";
import { standingWords } from "./protocol-view";

/** How a criterion stands where a figure of it is shown. */
export type StandingInPeriod = {
  /** "from the beginning", or since when, as of today; of several practices each that differs. */
  readonly standing: string;
  /** Null where it was in force on some day of the period; else that it was not, and since when it is. */
  readonly notInForce: string | null;
};

/** @param practices codes of those that are shown */
export function standingInPeriod(
  protocol: Protocol,
  id: string,
  practices: readonly string[],
  period: Pick<Period, "from" | "until">,
  today: string,
): StandingInPeriod {
  const spans = practices.flatMap((practice) => spansIn(protocol, { id, practice }));
  const within = spans.some(
    ({ from, until }) =>
      (from === null || from < period.until) && (until === null || until > period.from),
  );
  const standing = together(
    practices.map((practice) => {
      const state = criterionState(protocol, { id, practice, today });
      return { practice, words: state ? standingWords(state, protocol, practice) : elsewhere };
    }),
  );
  return {
    standing,
    notInForce: within
      ? null
      : `It was not in force in this period: ${whenWords(spans, period, today)}.`,
  };
}

const elsewhere = "none of its criteria";

function together(each: readonly { practice: string; words: string }[]): string {
  const [first] = each;
  if (!first) return "in no practice";
  if (each.every(({ words }) => words === first.words)) return first.words;
  return each.map(({ practice, words }) => `${practice}: ${words}`).join("; ");
}

/** When it was in force, where that was on no day of the period. */
function whenWords(spans: readonly Span[], period: Pick<Period, "until">, today: string): string {
  const begins = spans.flatMap(({ from }) => (from === null ? [] : [from])).sort();
  const later = begins.find((from) => from >= period.until);
  if (later)
    return `it ${later <= today ? "came" : "comes"} into force on ${day(later)}, and no day before that counts`;
  const [ended] = spans
    .flatMap(({ until }) => until ?? [])
    .sort()
    .reverse();
  return ended
    ? `it has been out of force since ${day(ended)}`
    : "it has been in force on no day so far";
}
