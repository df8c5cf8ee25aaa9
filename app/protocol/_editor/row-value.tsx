"use client";

import type { Path } from "@/lib/views/protocol/edit/at-path";
import { type RowField, valueChoices } from "@/lib/views/protocol/edit/vocabulary-choices";
import type { Part } from "@/lib/views/protocol/part";
import { unitOf } from "@/lib/views/protocol/value-words";
import { Choice } from "./choice";
import { idOf } from "./editor-tools";
import { NumberBox } from "./number-box";
import { Ticks } from "./ticks";

/** What a row compares with; nothing where it asks only whether something is recorded. */
export function RowValue(props: {
  at: Path;
  part: Part;
  field: RowField;
  put: (part: Part, how?: { typing?: boolean }) => void;
}) {
  const { part, field, put } = props;
  const { core } = part;
  const id = idOf(props.at, "value");
  const unit = unitOf(field.unit).trim();
  const shared = { id, ...(unit ? { unit } : {}) };
  const name = field.name;
  if ("atLeast" in core)
    return (
      <NumberBox
        {...shared}
        label="Limit"
        value={core.atLeast}
        change={(atLeast) => put({ ...part, core: { ...core, atLeast } }, { typing: true })}
      />
    );
  if ("atMost" in core)
    return (
      <NumberBox
        {...shared}
        label="Limit"
        value={core.atMost}
        change={(atMost) => put({ ...part, core: { ...core, atMost } }, { typing: true })}
      />
    );
  if ("among" in core)
    return (
      <Ticks
        id={id}
        legend="Which of them"
        quiet
        options={valueChoices(field)}
        chosen={core.among}
        change={(among) => put({ ...part, core: { field: name, among } })}
      />
    );
  if (!("is" in core)) return null;
  if (typeof core.is === "boolean")
    return (
      <Choice
        id={id}
        label="Yes or no"
        value={core.is === part.negated ? "no" : "yes"}
        options={yesOrNo}
        change={(to) => put({ ...part, negated: false, core: { field: name, is: to === "yes" } })}
      />
    );
  if (field.kind === "number")
    return (
      <NumberBox
        {...shared}
        label="Value"
        value={typeof core.is === "number" ? core.is : null}
        change={(is) => put({ ...part, core: { field: name, is: is ?? "" } }, { typing: true })}
      />
    );
  if (field.kind === "choice")
    return (
      <Choice
        id={id}
        label="Value"
        value={String(core.is)}
        options={valueChoices(field)}
        change={(is) => put({ ...part, core: { field: name, is } })}
      />
    );
  return (
    <span className="editor-choice">
      <label className="only-heard" htmlFor={id}>
        Value
      </label>
      <input
        id={id}
        value={String(core.is)}
        maxLength={80}
        onChange={({ target }) =>
          put({ ...part, core: { field: name, is: target.value } }, { typing: true })
        }
      />
    </span>
  );
}

const yesOrNo = [
  { value: "yes", words: "yes" },
  { value: "no", words: "no" },
];
