"use client";

import type { Option, OptionGroup } from "@/lib/views/protocol/edit/vocabulary-choices";

/** A choice within a sentence: its label is heard, and seen where `seen` is set. */
export function Choice(props: {
  id: string;
  label: string;
  value: string;
  options?: readonly Option[];
  groups?: readonly OptionGroup[];
  seen?: boolean;
  disabled?: boolean;
  change: (value: string) => void;
}) {
  const all = [...(props.options ?? []), ...(props.groups ?? []).flatMap(({ options }) => options)];
  const isKnown = all.some(({ value }) => value === props.value);
  return (
    <span className="editor-choice">
      <label className={props.seen ? undefined : "only-heard"} htmlFor={props.id}>
        {props.label}
      </label>
      <select
        id={props.id}
        value={props.value}
        disabled={props.disabled}
        onChange={({ target }) => props.change(target.value)}
      >
        {isKnown ? null : <option value={props.value}>{props.value || "choose …"}</option>}
        {props.options?.map(option)}
        {props.groups?.map((group) => (
          <optgroup key={group.label} label={group.label}>
            {group.options.map(option)}
          </optgroup>
        ))}
      </select>
    </span>
  );
}

function option({ value, words }: Option) {
  return (
    <option key={value} value={value}>
      {words}
    </option>
  );
}
