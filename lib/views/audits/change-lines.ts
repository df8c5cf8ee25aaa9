import type { RecordChanges } from "@/lib/audit/cycle/record-changes";
import type { Figure } from "@/lib/audit/figure";
import { shortCounts } from "../figure-cells";
import { estimateWords } from "../figure-line";
import { titleOf } from "../measure-words";
import { count } from "../quantity";
import { subjectName } from "../subject-name";

/** What later records would have changed of a signed audit, in lines; the first says it all together. */
export type ChangeLines = {
  readonly summary: string;
  readonly records: readonly string[];
  readonly figures: readonly string[];
};

const mostNamed = 12;

export function changeLines(changes: RecordChanges): ChangeLines {
  const { added, changed, gone } = changes.visits;
  const figures = changes.figures.filter(({ before, now }) => wordsOf(before) !== wordsOf(now));
  const visits = added.length + changed.length + gone.length;
  return {
    summary: `Since this was signed ${count(visits)} ${visits === 1 ? "visit is" : "visits are"} no longer what ${visits === 1 ? "it was" : "they were"}, and ${count(figures.length)} ${figures.length === 1 ? "figure would be another" : "figures would be others"}.`,
    records: [
      listed("Changed", changed),
      listed("Come in since", added),
      listed("Gone since", gone),
      changes.others.length > 0
        ? `Upkeep, or who bears which code, is not what it was: ${changes.others.join(", ")}.`
        : "",
      changes.criteria.length > 0
        ? `Criteria that are not what they were: ${changes.criteria.join(", ")}.`
        : "",
    ].filter(Boolean),
    figures: figures.map(({ before, now }) => {
      const one = now ?? before;
      const name = one ? `${titleOf(one)}, ${subjectName(one.about)}, ${one.period}` : "";
      return `${name}: ${wordsOf(before)}; now ${wordsOf(now)}`;
    }),
  };
}

function wordsOf(figure: Figure | null): string {
  return figure ? `${estimateWords(figure)}, ${shortCounts(figure)}` : "no units";
}

function listed(what: string, keys: readonly string[]): string {
  if (keys.length === 0) return "";
  const more = keys.length > mostNamed ? `, and ${count(keys.length - mostNamed)} more` : "";
  return `${what}: ${keys.slice(0, mostNamed).join(", ")}${more}.`;
}
