"use client";

import { type FormEvent, startTransition, useState } from "react";
import type { Answer } from "@/app/_parts/answer";
import { Field } from "@/app/_parts/field";
import type { EditorView } from "@/lib/views/protocol/editor-view";
import { Ticks } from "./ticks";

type Wrong = { readonly path: string; readonly part: string; readonly message: string };

/** From which day, where, and why: the only part that is a form, so that no key pressed above sends it. */
export function SavePart(props: {
  view: EditorView;
  practices: readonly string[];
  choosePractices: (codes: readonly string[]) => void;
  answer: Answer;
  /** What is still wrong with the criterion. */
  wrong: readonly Wrong[];
  goTo: (path: string) => void;
  waiting: boolean;
  send: (fields: Record<string, string>) => void;
}) {
  const { view, practices, answer, wrong } = props;
  const [from, setFrom] = useState(view.today);
  const [reason, setReason] = useState("");
  const submit = (event: FormEvent) => {
    event.preventDefault();
    startTransition(() => props.send({ from, reason }));
  };
  return (
    <form className="editor-save form" aria-label="Put in force" noValidate onSubmit={submit}>
      <h2>From when, where and why</h2>
      <Field
        label="From"
        name="from"
        type="date"
        required
        value={from}
        hint={view.fromWords}
        error={answer.wrong?.from}
        onChange={({ target }) => setFrom(target.value)}
      />
      {view.practices.length > 1 ? (
        <div>
          <Ticks
            id="editor-practices"
            legend="For which practices"
            options={view.practices.map(({ code, name }) => ({ value: code, words: name }))}
            chosen={practices}
            change={props.choosePractices}
          />
        </div>
      ) : null}
      {answer.wrong?.practices ? <p className="field-error">{answer.wrong.practices}</p> : null}
      <Field
        label="Reason"
        name="reason"
        required
        maxLength={500}
        value={reason}
        hint="It stands beside the version and is kept."
        error={answer.wrong?.reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <div role="status">
        {wrong.length > 0 ? (
          <div className="form-error">
            <p>Not in force yet. Mend this first:</p>
            <ul>
              {wrong.map(({ path, part, message }) => (
                <li key={path}>
                  <button type="button" className="plain" onClick={() => props.goTo(path)}>
                    {part}
                  </button>{" "}
                  {message}
                </li>
              ))}
            </ul>
          </div>
        ) : null}
        {answer.wrong?.form ? <p className="form-error">{answer.wrong.form}</p> : null}
      </div>
      <div>
        <button type="submit" className="main" disabled={props.waiting}>
          {props.waiting ? "One moment …" : "Put in force"}
        </button>
      </div>
    </form>
  );
}
