import type { Figure } from "@/lib/audit/figure";
import { sitsInNoPatient } from "@/lib/audit/sits-in-no-patient";
import { valueWords } from "./figure-line";
import { unitName } from "./measure-words";
import { decimal } from "./quantity";

/**
 * Which interval of a figure to read, and how much wider it is than the plain one; empty where there is no interval.
 * The number of patients is never said: it may be one that has to be masked.
 */
export function clusteredWords(figure: Figure): string {
  const { clustered, interval } = figure;
  if (figure.estimate === null || (!clustered && !interval)) return "";
  if (sitsInNoPatient(figure))
    return `${sentence(unitName(figure, 2))} sit in no patient; the plain interval is the one to read.`;
  const alike = `${unitName(figure, 2)} of one patient resembling each other`;
  if (!clustered)
    return `Too few patients to allow for ${alike}: the plain interval leaves that out and may well be too narrow.`;
  const read = `Read ${valueWords(figure, clustered.lower)} to ${valueWords(figure, clustered.upper)}`;
  if (clustered.designEffect === null)
    return `${read}, in which patients are the units: with ${noneOrAll(figure)} nothing shows how alike ${unitName(figure, 2)} of one patient are.`;
  return `${read}, which allows for ${alike}${widerWords(figure, clustered.timesPlain)}.`;
}

/** What the two lines of an interval are, for a drawing that has both. */
export const outerLineWords =
  "The thick line is the plain interval; the thin one allows for units of one patient resembling each other, and is the one to read.";

// Of a rate the plain interval compared with is Wilson's, whichever stands beside the estimate.
function widerWords({ kind }: Figure, times: number | null): string {
  if (times === null) return "";
  const plain = kind === "rate" ? "the plain one by Wilson" : "the plain one";
  if (times < 0.95) return `; here it is no wider than ${plain}`;
  if (times <= 1.05) return `; it is hardly wider than ${plain}`;
  return `; it is ${decimal(times, 1)} times as wide as ${plain}`;
}

function noneOrAll(figure: Figure): string {
  if (figure.estimate === 0) return figure.criterion ? "none met" : "none seen";
  return figure.criterion ? "all met" : "every one affected";
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
