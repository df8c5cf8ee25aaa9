"use client";

import { useState } from "react";

/**
 * A number that is typed; empty is null. What is no number stays in the box and says so.
 *
 * @param props.times shown times this: 100 for per cent
 */
export function NumberBox(props: {
  id: string;
  label: string;
  value: number | null;
  unit?: string;
  times?: number;
  change: (value: number | null) => void;
}) {
  const times = props.times ?? 1;
  const shown = props.value === null ? "" : String(Number((props.value * times).toFixed(6)));
  const [typed, setTyped] = useState(shown);
  // An undo, or another row in this place, changes the value from outside.
  const text = numberOf(typed, times) === props.value ? typed : shown;
  const isNoNumber = typed.trim() !== "" && text === typed && numberOf(typed, times) === null;
  return (
    <span className="editor-number">
      <label className="only-heard" htmlFor={props.id}>
        {props.label}
      </label>
      <input
        id={props.id}
        inputMode="decimal"
        autoComplete="off"
        size={7}
        value={text}
        aria-invalid={isNoNumber || undefined}
        onChange={({ target }) => {
          setTyped(target.value);
          props.change(numberOf(target.value, times));
        }}
      />
      {props.unit ? <span className="nowrap">{props.unit}</span> : null}
      {isNoNumber ? <span className="field-error">Write a number, as 2.5.</span> : null}
    </span>
  );
}

function numberOf(text: string, times: number): number | null {
  const plain = text.trim().replace(",", ".");
  if (!/^(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  return Number((Number(plain) / times).toFixed(9));
}
