import type { Figure, FigureInterval } from "@/lib/audit/figure";
import { intervalMethod } from "./interval-method";
import { titleOf } from "./measure-words";
import { atMostWords, noneSeen } from "./none-seen";
import { count, decimal, percent, quantity } from "./quantity";
import { reasonWords } from "./reason-words";
import { subjectName } from "./subject-name";

/** A figure in one line of text: name, whose, estimate with interval, counts. */
export function figureLine(figure: Figure): string {
  return `${titleOf(figure)}, ${subjectName(figure.about)}, ${figure.period}: ${estimateWords(figure)} (${countWords(figure)})`;
}

/** The estimate, or why there is none; of an event that was not seen, how high its rate may still be. */
export function estimateWords(figure: Figure): string {
  if (figure.estimate === null) return figure.why ?? "nothing to estimate";
  if (noneSeen(figure) && figure.interval) {
    return `none; ${atMostWords(figure)} may still be (${decimal(figure.interval.level * 100, 0)} % interval, ${intervalMethod(figure.interval.method)})`;
  }
  return `${valueWords(figure, figure.estimate)}, ${intervalWords(figure, figure.interval)}`;
}

/** A value in the figure's unit. */
export function valueWords(figure: Figure, value: number): string {
  return figure.kind === "median" ? quantity(value, figure.unit) : percent(value);
}

/** The interval with its level and method, or that there is none. */
export function intervalWords(figure: Figure, interval: FigureInterval | null): string {
  if (!interval) return "too few for an interval";
  const ends = `${valueWords(figure, interval.lower)} to ${valueWords(figure, interval.upper)}`;
  return `${decimal(interval.level * 100, 0)} % interval ${ends} (${intervalMethod(interval.method)})`;
}

/** The counts that a figure is never shown without. */
export function countWords(figure: Figure): string {
  const counts =
    figure.kind === "median"
      ? `${count(figure.n)} recorded of ${count(figure.population)}`
      : `${count(figure.numerator)} of ${count(figure.denominator)}; ${count(figure.population)} in all`;
  const reasons = (named: Readonly<Record<string, number>>) =>
    Object.entries(named).map(([reason, units]) => `${count(units)} ${reasonWords(reason)}`);
  const excluded = reasons(figure.excluded);
  const excepted = reasons(figure.excepted);
  return [
    counts,
    excluded.length > 0 ? `left out: ${excluded.join(", ")}` : "",
    excepted.length > 0 ? `excepted: ${excepted.join(", ")}` : "",
    `not recorded: ${count(figure.notRecorded)}`,
  ]
    .filter(Boolean)
    .join("; ");
}
