"use client";

import { useActionState, useState } from "react";
import { criterionWords } from "@/lib/views/protocol/criterion-words";
import { partAt } from "@/lib/views/protocol/edit/at-path";
import { sendable, settled } from "@/lib/views/protocol/edit/editable";
import type { EditorView } from "@/lib/views/protocol/editor-view";
import { putInForceAct } from "../acts";
import { ConditionGroup } from "./condition-group";
import { EditorPart } from "./editor-part";
import { EditorContext, idOf } from "./editor-tools";
import { ExceptionsPart } from "./exceptions-part";
import { ExclusionsPart } from "./exclusions-part";
import { Reading } from "./reading";
import { SavePart } from "./save-part";
import { TargetPart } from "./target-part";
import { UnitPart } from "./unit-part";
import { useCounts } from "./use-counts";
import { useCriterion } from "./use-criterion";
import { WordsPart } from "./words-part";

/** Edits a criterion by sentences with choices, and shows as one goes how it reads and what it would have done. */
export function Editor(props: { view: EditorView }) {
  const { view } = props;
  const { history, change, undo, redo } = useCriterion(view.criterion);
  const [practices, setPractices] = useState<readonly string[]>([view.practice]);
  const [answer, send, waiting] = useActionState(putInForceAct, {});
  const [sent, setSent] = useState("");
  const criterion = history.now;
  const toSend = sendable(criterion);
  const about = { unit: criterion.unit, own: view.own };
  const fields = {
    criterion: JSON.stringify(toSend),
    practices: JSON.stringify(practices),
    practice: practices[0] ?? view.practice,
    isNew: view.isNew ? "yes" : "",
  };
  const counts = useCounts(JSON.stringify(fields));
  const wrong = stillWrong(answer.wrong ?? {}, sent, toSend);
  return (
    <EditorContext value={{ terms: view.terms, wrong: wrong.byPath, change }}>
      <div className="editor">
        <div className="editor-parts">
          <div className="row editor-undo">
            <button type="button" onClick={undo} disabled={history.past.length === 0}>
              Undo
            </button>
            <button type="button" onClick={redo} disabled={history.future.length === 0}>
              Redo
            </button>
          </div>
          <EditorPart title="What it counts" id="unit">
            <UnitPart criterion={criterion} isNew={view.isNew} />
          </EditorPart>
          <EditorPart title="Which of them" id="population">
            <ConditionGroup
              at={["population"]}
              condition={criterion.population}
              about={about}
              legend="Only those of which"
              empty="All of them: add a row to narrow it."
              depth={1}
            />
          </EditorPart>
          <EditorPart title="Left out first" id="exclusions">
            <ExclusionsPart exclusions={criterion.exclusions} about={about} />
          </EditorPart>
          <EditorPart title="What counts as met" id="met">
            <ConditionGroup
              at={["met"]}
              condition={criterion.met}
              about={about}
              legend="Met if"
              empty="Nothing is demanded yet: add a row, or a sentence about several."
              depth={1}
            />
          </EditorPart>
          <EditorPart title="Exceptions" id="exceptions">
            <ExceptionsPart criterion={criterion} />
          </EditorPart>
          <EditorPart title="Target" id="target">
            <TargetPart criterion={criterion} />
          </EditorPart>
          <EditorPart title="In words" id="words">
            <WordsPart criterion={criterion} />
          </EditorPart>
        </div>
        <Reading
          sentence={criterionWords(settled(criterion), view.own).whole}
          counted={view.counted}
          counts={counts}
        />
        <SavePart
          view={view}
          practices={practices}
          choosePractices={setPractices}
          answer={answer}
          wrong={wrong.list}
          goTo={goTo}
          waiting={waiting}
          send={(more) => {
            setSent(fields.criterion);
            const data = new FormData();
            for (const [name, value] of Object.entries({ ...fields, ...more }))
              data.set(name, value);
            send(data);
          }}
        />
      </div>
    </EditorContext>
  );
}

/** What the last answer says of parts that are still as they were sent. */
function stillWrong(wrong: Readonly<Partial<Record<string, string>>>, sent: string, now: unknown) {
  const before: unknown = sent ? JSON.parse(sent) : undefined;
  const list = Object.entries(wrong).flatMap(([key, message = ""]) => {
    const path = key.startsWith("criterion.") ? key.slice("criterion.".length) : null;
    if (path === null) return [];
    const at = path.split(".");
    const same = JSON.stringify(partAt(before, at)) === JSON.stringify(partAt(now, at));
    return same ? [{ path, part: partWords[at[0] ?? ""] ?? "The criterion", message }] : [];
  });
  return { list, byPath: Object.fromEntries(list.map(({ path, message }) => [path, message])) };
}

/** Puts the focus on the part at a path, or on the nearest around it that is shown. */
function goTo(path: string): void {
  const parts = path.split(".");
  for (let length = parts.length; length > 0; length -= 1) {
    const element = document.getElementById(idOf(parts.slice(0, length)));
    if (!element) continue;
    const inside = element.matches("input, select, textarea")
      ? element
      : element.querySelector<HTMLElement>("input, select, textarea, button");
    (inside ?? element).focus();
    element.scrollIntoView({ block: "center" });
    return;
  }
}

const partWords: Readonly<Record<string, string>> = {
  unit: "What it counts",
  treatmentPopulation: "What it counts",
  byClinician: "What it counts",
  population: "Which of them",
  exclusions: "Left out first",
  met: "What counts as met",
  exceptions: "Exceptions",
  target: "Target",
  targetSource: "Whose choice the target is",
  completenessFloor: "Target",
  title: "Title",
  statement: "What is demanded",
  rationale: "Why",
  source: "Where it comes from",
};
