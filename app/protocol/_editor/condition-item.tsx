"use client";

import type { ReactNode } from "react";
import type { About } from "@/lib/views/protocol/about";
import { groupOf } from "@/lib/views/protocol/condition-words";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { isRow } from "@/lib/views/protocol/edit/comparisons";
import type { EditedCondition } from "@/lib/views/protocol/edit/editable";
import { conditionOf, type Part, partOf } from "@/lib/views/protocol/part";
import { ConditionRow } from "./condition-row";
import { idOf, useEditor } from "./editor-tools";
import type { GroupProps } from "./group-props";
import { ListSentence } from "./list-sentence";
import { Wrong } from "./wrong";

/** One row of a group: a comparison, a sentence about several, or a further group; with buttons to move and remove it. */
export function ConditionItem(props: {
  at: Path;
  condition: EditedCondition;
  about: About;
  depth: number;
  /** The row in words, for who hears the buttons. */
  words: string;
  place: number;
  count: number;
  renderGroup: (inner: GroupProps) => ReactNode;
  remove: () => void;
  move: (by: 1 | -1) => void;
}) {
  const { at, about, renderGroup, count, place } = props;
  const { change } = useEditor();
  const part = partOf(props.condition);
  const put = (next: Part, how?: { typing?: boolean }) => change(at, conditionOf(next), how);
  const heard = <span className="only-heard">: {props.words}</span>;
  const group = groupOf(part.core);
  return (
    <li className="editor-row" id={group ? undefined : idOf(at)}>
      <div className="editor-said">
        {group ? (
          renderGroup({
            at,
            condition: props.condition,
            about,
            legend: "Group",
            empty: "Nothing yet: add a row.",
            depth: props.depth + 1,
          })
        ) : isRow(part.core) ? (
          <ConditionRow at={at} part={part} about={about} put={put} />
        ) : (
          <ListSentence
            at={at}
            part={part}
            about={about}
            depth={props.depth}
            put={put}
            renderGroup={renderGroup}
          />
        )}
        {group ? null : <Wrong at={at} within={isRow(part.core)} />}
      </div>
      <div className="editor-buttons">
        {count > 1 ? (
          <>
            <button
              type="button"
              className="plain"
              id={idOf(at, "up")}
              disabled={place === 0}
              onClick={() => props.move(-1)}
            >
              Up{heard}
            </button>
            <button
              type="button"
              className="plain"
              id={idOf(at, "down")}
              disabled={place === count - 1}
              onClick={() => props.move(1)}
            >
              Down{heard}
            </button>
          </>
        ) : null}
        <button type="button" className="plain" onClick={props.remove}>
          Remove{heard}
        </button>
      </div>
    </li>
  );
}
