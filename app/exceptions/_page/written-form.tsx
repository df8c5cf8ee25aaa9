"use client";

import { type ComponentProps, useActionState, useId } from "react";
import type { Act } from "@/app/_parts/answer";
import { Field } from "@/app/_parts/field";

type FieldSpec = Omit<ComponentProps<typeof Field>, "id" | "error">;

/**
 * A form with a few lines of text, and choices before them where it has some. What is wrong stands beside its field.
 * Works without JavaScript.
 */
export function WrittenForm(props: {
  act: Act;
  button: string;
  /** What the form does, for those who hear it. */
  label: string;
  hidden: Readonly<Record<string, string>>;
  fields?: readonly FieldSpec[];
  text: {
    readonly label: string;
    readonly name: string;
    readonly hint: string;
    readonly required: boolean;
  };
  kind?: "main";
}) {
  const [answer, act, waiting] = useActionState(props.act, {});
  const id = useId();
  const { text } = props;
  const wrong = answer.wrong?.[text.name];
  return (
    <form className="form" action={act} aria-label={props.label}>
      {Object.entries(props.hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {props.fields?.map((field) => (
        <Field
          key={field.name}
          {...field}
          id={`${id}-${field.name}`}
          defaultValue={answer.given?.[field.name] ?? field.defaultValue}
          error={answer.wrong?.[field.name]}
        />
      ))}
      <div>
        <label htmlFor={`${id}-text`}>{text.label}</label>
        <p className="hint" id={`${id}-hint`}>
          {text.hint}
        </p>
        <textarea
          id={`${id}-text`}
          name={text.name}
          rows={3}
          maxLength={500}
          required={text.required}
          key={answer.given?.[text.name] ?? ""}
          defaultValue={answer.given?.[text.name] ?? ""}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={`${id}-hint${wrong ? ` ${id}-wrong` : ""}`}
        />
        {wrong ? (
          <p className="field-error" id={`${id}-wrong`}>
            {wrong}
          </p>
        ) : null}
      </div>
      <div>
        <button type="submit" className={props.kind} disabled={waiting}>
          {waiting ? "One moment …" : props.button}
        </button>
      </div>
      <div role="status">
        {answer.wrong?.form ? <p className="form-error">{answer.wrong.form}</p> : null}
        {answer.done ? <p className="form-done">{answer.done}</p> : null}
      </div>
    </form>
  );
}
