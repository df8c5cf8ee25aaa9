import type { ChartName, WhyNoLimits } from "@/lib/audit/over-time";
import type { Measured } from "@/lib/measures/measured";
import { unitName } from "./measure-words";

/** Which chart it is and why, in a sentence. */
export function chartKind(chart: ChartName, measure: Measured): string {
  return kinds[chart](measure);
}

/** Why a stretch has no limits. */
export function noLimitsWords(why: WhyNoLimits): string {
  return noLimits[why];
}

const kinds: Readonly<Record<ChartName, (measure: Measured) => string>> = {
  p: () =>
    "p chart of the months' shares: limits three standard errors from the mean share, by each month's units.",
  "p-prime": () =>
    "p′ chart (Laney 2002) of the months' shares: they vary by more than chance alone, and the limits are widened by as much.",
  u: () =>
    "u chart of the months: separations over uses, limits three standard errors from the mean.",
  g: (measure) =>
    `g chart: how many ${unitName(measure, 2)} lie between one separation and the next, as separations are rare. Higher is better.`,
  t: () =>
    "t chart (Nelson 1994): how many days lie between one separation and the next, as separations are rare. Higher is better.",
  xmr: () =>
    "XmR chart of the months' medians: limits 2.66 mean moving ranges from their mean. A month of fewer than 10 units is a gap.",
};

const noLimits: Readonly<Record<WhyNoLimits, string>> = {
  "no-units": "No units in these months.",
  "no-variation": "The months do not differ, so that no limits can be told from them.",
  "no-neighbours": "No two neighbouring months have enough units, so that no limits can be told.",
  "uneven-months":
    "No limits are drawn: the largest month has over four times the units of the smallest, and one pair of limits would not be fair to both.",
  "too-few-events": "Too few separations for limits.",
};
