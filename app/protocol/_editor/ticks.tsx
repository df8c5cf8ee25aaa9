"use client";

import type { Option } from "@/lib/views/protocol/edit/vocabulary-choices";

/** Several of a list, ticked; the order is the list's. */
export function Ticks(props: {
  id: string;
  legend: string;
  options: readonly Option[];
  chosen: readonly string[];
  /** The legend is heard only. */
  quiet?: boolean;
  change: (chosen: string[]) => void;
}) {
  const { chosen } = props;
  const unknown = chosen.filter((code) => !props.options.some(({ value }) => value === code));
  const options = [...props.options, ...unknown.map((value) => ({ value, words: value }))];
  return (
    <fieldset className="editor-ticks" id={props.id} tabIndex={-1}>
      <legend className={props.quiet ? "only-heard" : undefined}>{props.legend}</legend>
      {options.map(({ value, words }) => (
        <label key={value} className="tick">
          <input
            type="checkbox"
            checked={chosen.includes(value)}
            onChange={({ target }) =>
              props.change(
                options
                  .map((one) => one.value)
                  .filter((code) => (code === value ? target.checked : chosen.includes(code))),
              )
            }
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
