"use client";

import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idOf, useEditor } from "./editor-tools";
import { Wrong } from "./wrong";

/** A text of the criterion with its label, its hint and what is wrong with it. */
export function TextBox(props: {
  at: Path;
  label: string;
  value: string;
  most: number;
  hint?: string;
  long?: boolean;
  /** Instead of writing the text where it is. */
  change?: (text: string) => void;
}) {
  const { at, value, most } = props;
  const { change, wrong } = useEditor();
  const id = idOf(at);
  const isWrong = at.join(".") in wrong;
  const shared = {
    id,
    value,
    maxLength: most,
    "aria-invalid": isWrong || undefined,
    "aria-describedby": `${id}-hint ${id}-wrong`,
    onChange: ({ target }: { target: { value: string } }) =>
      props.change ? props.change(target.value) : change(at, target.value, { typing: true }),
  };
  return (
    <div>
      <label htmlFor={id}>{props.label}</label>
      {props.hint ? (
        <p className="hint" id={`${id}-hint`}>
          {props.hint}
        </p>
      ) : null}
      {props.long ? <textarea rows={3} {...shared} /> : <input autoComplete="off" {...shared} />}
      <Wrong at={at} id={`${id}-wrong`} />
    </div>
  );
}
