"use client";

import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { TextBox } from "./text-box";

/** What people read of it. */
export function WordsPart(props: { criterion: EditedCriterion }) {
  const { title, statement, rationale, source } = props.criterion;
  return (
    <div className="stack-tight">
      <TextBox
        at={["title"]}
        label="Title"
        hint="A few words, as they stand in a list."
        value={title}
        most={80}
      />
      <TextBox
        at={["statement"]}
        label="What is demanded"
        hint="In one sentence, as you would say it to a colleague."
        value={statement}
        most={400}
        long
      />
      <TextBox at={["rationale"]} label="Why" value={rationale} most={600} long />
      <TextBox
        at={["source"]}
        label="Where it comes from"
        hint="The publication with its year, or: Common practice."
        value={source}
        most={300}
      />
    </div>
  );
}
