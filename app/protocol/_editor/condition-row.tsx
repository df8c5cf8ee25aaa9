"use client";

import type { About } from "@/lib/views/protocol/about";
import { fieldAbout } from "@/lib/views/protocol/condition-words";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import {
  type ComparisonName,
  compared,
  comparisonChoices,
  comparisonOf,
  fieldOfRow,
  isRow,
  rowOf,
} from "@/lib/views/protocol/edit/comparisons";
import { fieldChoices } from "@/lib/views/protocol/edit/vocabulary-choices";
import type { Part } from "@/lib/views/protocol/part";
import { Choice } from "./choice";
import { idOf, useEditor } from "./editor-tools";
import { RowValue } from "./row-value";
import { UnrecordedChoice } from "./unrecorded-choice";

/** A row: what is looked at, how it is compared, with what. */
export function ConditionRow(props: {
  at: Path;
  part: Part;
  about: About;
  put: (part: Part, how?: { typing?: boolean }) => void;
}) {
  const { at, part, about, put } = props;
  const { terms } = useEditor();
  if (!isRow(part.core)) return null;
  const field = fieldAbout(about, fieldOfRow(part.core));
  return (
    <div className="editor-sentence">
      <Choice
        id={idOf(at, "first")}
        label="What is looked at"
        value={field.name}
        groups={fieldChoices(about, terms)}
        change={(name) => put(rowOf(fieldAbout(about, name)))}
      />
      <Choice
        id={idOf(at, "comparison")}
        label="How it is compared"
        value={comparisonOf(part)}
        options={comparisonChoices(field.kind)}
        change={(to) => put(compared(part, field, to as ComparisonName))}
      />
      <RowValue at={at} part={part} field={field} put={put} />
      <UnrecordedChoice at={at} part={part} quiet={false} put={put} />
    </div>
  );
}
