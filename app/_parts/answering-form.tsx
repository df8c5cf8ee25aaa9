"use client";

import { type ComponentProps, type ReactNode, useActionState, useId } from "react";
import type { Act } from "./answer";
import { Field } from "./field";

type FieldSpec = Omit<ComponentProps<typeof Field>, "id" | "error">;

/**
 * A form whose action answers in words: what was done, or what is wrong beside its field. Works without JavaScript.
 *
 * @param props.hidden values that the action needs and the person does not type
 * @param props.row fields and button in one line
 * @param props.over there is nothing more to send: what was answered last stays
 */
export function AnsweringForm(props: {
  act: Act;
  button: string;
  hidden?: Readonly<Record<string, string>>;
  fields?: readonly FieldSpec[];
  kind?: "main" | "plain";
  row?: boolean;
  over?: boolean;
  label?: string;
  children?: ReactNode;
}) {
  const [answer, act, waiting] = useActionState(props.act, {});
  const id = useId();
  if (props.over)
    return answer.done ? (
      <p role="status" className="form-done">
        {answer.done}
      </p>
    ) : null;
  return (
    <form className={props.row ? "stack-tight" : "form"} action={act} aria-label={props.label}>
      {Object.entries(props.hidden ?? {}).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {props.children}
      <div className={props.row ? "form-row" : "form"}>
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
          <button type="submit" className={props.kind} disabled={waiting}>
            {waiting ? "One moment …" : props.button}
          </button>
        </div>
      </div>
      <div role="status">
        {answer.wrong?.form ? <p className="form-error">{answer.wrong.form}</p> : null}
        {answer.done ? (
          <p className="form-done">
            {answer.done}
            {answer.secret ? (
              <>
                {" "}
                The password is <code>{answer.secret}</code> and is shown only now.
              </>
            ) : null}
          </p>
        ) : null}
      </div>
    </form>
  );
}
