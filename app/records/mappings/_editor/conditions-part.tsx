"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import type { TableDraft } from "@/lib/views/mapping/draft";
import { ConditionRow } from "./condition-row";
import { idAt, useMapping } from "./editor-tools";

/** Which rows of the file feed a table: all, or those of which all conditions hold. */
export function ConditionsPart(props: { place: number; heading: string; table: TableDraft }) {
  const { place, table } = props;
  const { change, columns } = useMapping();
  const only = table.only ?? [];
  const at = ["tables", place, "only"];
  return (
    <fieldset className="stack-tight">
      <legend>Which rows of the file</legend>
      {only.length === 0 ? <p>Every row.</p> : null}
      {only.map((condition, number) => (
        <ConditionRow
          // biome-ignore lint/suspicious/noArrayIndexKey: two conditions may be alike; their place tells them apart.
          key={number}
          at={[...at, number]}
          condition={condition}
          remove={() =>
            change(
              at,
              only.length === 1 ? undefined : only.filter((_, other) => other !== number),
              { focus: idAt(at, "more") },
            )
          }
        />
      ))}
      <Choice
        id={idAt(at, "more")}
        label={`A condition for ${props.heading}`}
        value=""
        options={[
          { value: "", words: "only where a column … " },
          ...columns.map(({ name }) => ({ value: name, words: name })),
        ]}
        change={(column) =>
          column &&
          change(at, [...only, { column, not: [""] }], {
            focus: idAt([...at, only.length], "how"),
          })
        }
      />
    </fieldset>
  );
}
