"use client";

import type { MappingDraft } from "@/lib/views/mapping/draft";
import type { PreviewView } from "@/lib/views/mapping/preview-view";
import { answeredWith, type Question } from "@/lib/views/mapping/questions";
import { useMapping } from "./editor-tools";

/** Questions about columns that their cells leave open; none is answered before somebody does. */
export function QuestionsPart(props: {
  draft: MappingDraft;
  questions: readonly Question[];
  preview: PreviewView | null;
}) {
  const { change } = useMapping();
  return (
    <>
      {props.questions.map((question, number) => {
        const examples = examplesOf(props.preview, question.column);
        const name = `m-question-${number}`;
        return (
          <fieldset
            key={`${question.about} ${question.column}`}
            className="mapping-question"
            id={name}
          >
            <legend>{legendOf(question)}</legend>
            <p>
              {question.about === "day-order"
                ? "Every cell of the column can be read in each of these ways."
                : "The cells do not tell which notation is meant, and it is never guessed."}
              {examples.length > 0 ? ` The first are ${examples.join(", ")}.` : ""}
            </p>
            {question.answers.map(({ value, words }) => (
              <label key={value} className="tick">
                <input
                  type="radio"
                  name={name}
                  value={value}
                  checked={question.given === value}
                  onChange={() => change([], answeredWith(props.draft, question, value))}
                />
                {words}
              </label>
            ))}
            {question.given === "" ? <p className="field-error">Not answered yet.</p> : null}
          </fieldset>
        );
      })}
    </>
  );
}

function legendOf({ about, column }: Question): string {
  return about === "day-order"
    ? `In which order are the days of “${column}” written?`
    : `In which notation are the teeth of “${column}” written?`;
}

function examplesOf(preview: PreviewView | null, column: string): string[] {
  const first = preview?.first;
  const place = first?.columns.findIndex(({ name, hidden }) => name === column && !hidden) ?? -1;
  if (!first || place < 0) return [];
  const cells = first.rows.map(({ cells: all }) => all[place] ?? "").filter((cell) => cell !== "");
  return [...new Set(cells)].slice(0, 3).map((cell) => `“${cell}”`);
}
