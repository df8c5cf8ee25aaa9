"use client";

import { useActionState } from "react";
import type { Act } from "@/app/_parts/answer";
import { periodNameWords } from "@/lib/views/period-words";

/** The private note on a quarter; works without JavaScript. */
export function NoteForm(props: { act: Act; quarter: string; text: string; saved: string | null }) {
  const [answer, act, waiting] = useActionState(props.act, {});
  const wrong = answer.wrong?.text ?? answer.wrong?.form;
  return (
    <form className="form note-form" action={act} aria-label="Private note">
      <input type="hidden" name="quarter" value={props.quarter} />
      <div>
        <label htmlFor="note-text">Your note on {periodNameWords(props.quarter)}</label>
        <p className="hint" id="note-hint">
          Only you can open it here. It may still have to be disclosed, to an inquiry or to a
          patient who asks for what is held about them: name nobody.
        </p>
        <textarea
          id="note-text"
          name="text"
          rows={5}
          maxLength={4000}
          key={props.quarter}
          defaultValue={answer.given?.text ?? props.text}
          aria-describedby="note-hint note-state"
          aria-invalid={wrong ? true : undefined}
        />
      </div>
      <div className="row">
        <button type="submit" className="main" disabled={waiting}>
          {waiting ? "One moment …" : "Keep the note"}
        </button>
        <span id="note-state" role="status" className="small soft">
          {wrong ? <span className="field-error">{wrong}</span> : (answer.done ?? props.saved)}
        </span>
      </div>
    </form>
  );
}
