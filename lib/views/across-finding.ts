import type { Figure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import type { ChartReference } from "./chart-rows";
import { shortCounts } from "./figure-cells";
import { valueWords } from "./figure-line";
import { rowLabel } from "./interval-chart";
import { titleOf, unitName } from "./measure-words";
import { atMostWords, noneSeen } from "./none-seen";
import { count, setShare } from "./quantity";

/** What figures side by side come to: the whole's figure first, then between what the single ones lie. No one is named. */
export function acrossFinding(
  measure: Measured,
  whole: Figure | undefined,
  parts: readonly Figure[],
): string {
  if (!whole || whole.estimate === null)
    return `${titleOf(measure)}: ${whole?.why?.toLowerCase() ?? "no units in this period."}`;
  const values = parts.flatMap((figure) => figure.estimate ?? []);
  const spread =
    values.length > 1
      ? `; the ${count(values.length)} shown lie between ${lowest(whole, Math.min(...values))} and ${valueWords(whole, Math.max(...values))}`
      : "";
  return `${titleOf(measure)}: ${wholeWords(whole)}${spread}`;
}

/** The whole a row is seen against, as a line: a median of all, or a pooled rate; the target of a criterion beside it. */
export function referencesOf(whole: Figure | undefined): ChartReference[] {
  if (!whole || whole.estimate === null) return [];
  const line = {
    value: whole.estimate,
    words: `${rowLabel(whole.about)} ${valueWords(whole, whole.estimate)}`,
  };
  const criterion = whole.criterion;
  return criterion
    ? [line, { value: criterion.target, words: `target ${setShare(criterion.target)}` }]
    : [line];
}

/** An event that was not seen is none, not a rate of 0. */
function lowest(whole: Figure, value: number): string {
  return value === 0 && whole.kind === "rate" && !whole.criterion
    ? "none"
    : valueWords(whole, value);
}

/** The interval without its method, for a sentence; the table and the definition name the method. */
function endsWords(figure: Figure): string {
  const { clustered } = figure;
  const interval = clustered ?? figure.interval;
  return interval
    ? `95 % interval ${valueWords(figure, interval.lower)} to ${valueWords(figure, interval.upper)}${clustered ? ", allowing for patients" : ""}`
    : "too few for an interval";
}

function wholeWords(whole: Figure): string {
  if (whole.estimate === null) return "";
  if (whole.kind === "median")
    return `half of ${count(whole.n)} ${unitName(whole, whole.n)} had ${valueWords(whole, whole.estimate)} or more (${endsWords(whole)})`;
  if (noneSeen(whole))
    return `none in ${count(whole.denominator)} ${unitName(whole, whole.denominator)}, ${atMostWords(whole)} may still be`;
  return `${shortCounts(whole)}, ${valueWords(whole, whole.estimate)} (${endsWords(whole)})`;
}
