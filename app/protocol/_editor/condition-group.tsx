"use client";

import { conditionWords, groupOf } from "@/lib/views/protocol/condition-words";
import { moved, type Path } from "@/lib/views/protocol/edit/at-path";
import { newRow, newSentence } from "@/lib/views/protocol/edit/beginnings";
import type { EditedCondition } from "@/lib/views/protocol/edit/editable";
import { conditionOf, type Part, partOf, wrappersOf } from "@/lib/views/protocol/part";
import { Choice } from "./choice";
import { ConditionItem } from "./condition-item";
import { idOf, useEditor } from "./editor-tools";
import type { GroupProps } from "./group-props";
import { UnrecordedChoice } from "./unrecorded-choice";
import { Wrong } from "./wrong";

/** How deeply groups stand in groups. */
const deepest = 3;
const hows = [
  { value: "all", words: "all of this holds" },
  { value: "any", words: "any of this holds" },
  { value: "not-all", words: "not all of this holds" },
  { value: "not-any", words: "none of this holds" },
];

/** Rows of which all, any or none must hold, with buttons to add further ones. */
export function ConditionGroup(props: GroupProps) {
  const { at, about, depth } = props;
  const { change, terms } = useEditor();
  const part = partOf(props.condition);
  const group = groupOf(part.core) ?? { how: "all", parts: [part.core] };
  const { parts } = group;
  const put = (next: Part, focus?: readonly string[]) =>
    change(at, conditionOf(next), focus ? { focus } : {});
  const withParts = (rows: readonly EditedCondition[], focus?: readonly string[]) =>
    put({ ...part, core: group.how === "all" ? { all: rows } : { any: rows } }, focus);
  const pathOf = (place: number): Path => [...at, ...wrappersOf(part), group.how, place];
  const add = (condition: EditedCondition | undefined) => {
    if (!condition) return;
    const first = idOf(pathOf(parts.length), "first");
    withParts([...parts, condition], [first]);
  };
  const row = newRow(about, terms);
  const sentence = newSentence(about, terms);
  const name = idOf(at, "add");
  return (
    <fieldset className="editor-group" id={idOf(at)}>
      <legend>{props.legend}</legend>
      {parts.length > 1 || part.negated ? (
        <Choice
          id={idOf(at, "how")}
          label={`${props.legend}: how many of the rows`}
          value={`${part.negated ? "not-" : ""}${group.how}`}
          options={hows}
          change={(to) =>
            put({
              ...part,
              negated: to.startsWith("not-"),
              core: to.endsWith("any") ? { any: parts } : { all: parts },
            })
          }
        />
      ) : null}
      <Wrong at={at} />
      {parts.length === 0 ? <p className="soft">{props.empty}</p> : null}
      <ol className="editor-rows">
        {parts.map((one, place) => (
          <ConditionItem
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no names; their place is what they are edited by.
            key={place}
            at={pathOf(place)}
            condition={one}
            about={about}
            depth={depth}
            words={conditionWords(one, about)}
            place={place}
            count={parts.length}
            renderGroup={(inner) => <ConditionGroup {...inner} />}
            remove={() =>
              withParts(
                parts.filter((_, i) => i !== place),
                [name],
              )
            }
            move={(by) => {
              const to = pathOf(place + by);
              const [first, second] = by < 0 ? ["up", "down"] : ["down", "up"];
              withParts(moved(parts, place, by), [idOf(to, first), idOf(to, second)]);
            }}
          />
        ))}
      </ol>
      <div className="row editor-add">
        <button type="button" id={name} className="plain" onClick={() => add(row)} disabled={!row}>
          Add a row<span className="only-heard"> to {props.legend}</span>
        </button>
        {sentence ? (
          <button type="button" className="plain" onClick={() => add(sentence)}>
            Add a sentence about several
            <span className="only-heard"> to {props.legend}</span>
          </button>
        ) : null}
        {depth < deepest && row ? (
          <button
            type="button"
            className="plain"
            onClick={() => add(group.how === "all" ? { any: [row] } : { all: [row] })}
          >
            Add a group<span className="only-heard"> to {props.legend}</span>
          </button>
        ) : null}
        <UnrecordedChoice at={at} part={part} quiet={parts.length < 2} put={put} />
      </div>
    </fieldset>
  );
}
