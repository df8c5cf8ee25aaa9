"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import type { FieldTerms } from "@/lib/views/mapping/terms";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";

/** What a field is in every row. */
export function AlwaysBox(props: {
  at: Path;
  field: FieldTerms;
  feed: { readonly always: string };
}) {
  const { at, field, feed } = props;
  const { change } = useMapping();
  const id = idAt(at, "always");
  const label = `${field.words} is always`;
  if (field.choices.length > 0)
    return (
      <Choice
        id={id}
        label={label}
        value={feed.always}
        options={field.choices}
        change={(always) => change(at, { always })}
      />
    );
  return (
    <span className="editor-choice">
      <label className="only-heard" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        value={feed.always}
        maxLength={200}
        autoComplete="off"
        onChange={({ target }) => change(at, { always: target.value }, { typing: true })}
      />
    </span>
  );
}
