"use client";

import { useActionState, useId } from "react";
import type { Act } from "@/app/_parts/answer";

/** A text of one's own to an audit; an empty one takes it away. */
export function OwnText(props: {
  act: Act;
  audit: number;
  of: { readonly text: string; readonly kept: string };
  label: string;
  button: string;
}) {
  const [answer, act, waiting] = useActionState(props.act, {});
  const id = useId();
  const { text, kept } = props.of;
  const wrong = answer.wrong?.text ?? answer.wrong?.form;
  return (
    <form className="form" action={act} aria-label={props.label}>
      <input type="hidden" name="audit" value={props.audit} />
      <div>
        <label htmlFor={id}>{props.label}</label>
        <textarea
          id={id}
          name="text"
          rows={4}
          maxLength={4000}
          key={answer.given?.text ?? text}
          defaultValue={answer.given?.text ?? text}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={`${id}-said`}
        />
      </div>
      <div>
        <button type="submit" disabled={waiting}>
          {waiting ? "One moment …" : props.button}
        </button>
      </div>
      <div role="status" id={`${id}-said`}>
        {wrong ? (
          <p className="form-error">{wrong}</p>
        ) : (
          <p className="small soft">{answer.done ?? kept}</p>
        )}
      </div>
    </form>
  );
}
