"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import { Ticks } from "@/app/protocol/_editor/ticks";
import type { ConditionDraft } from "@/lib/views/mapping/draft";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";
import { useWords } from "./use-words";

/** More words than these are typed, not ticked. */
const mostTicks = 30;

/** One condition: a column is, or is not, one of some words. */
export function ConditionRow(props: { at: Path; condition: ConditionDraft; remove: () => void }) {
  const { at, condition } = props;
  const { column } = condition;
  const { change, fileId } = useMapping();
  const known = useWords(fileId, column, true);
  const how = condition.is ? "is" : "not";
  const words = condition[how] ?? [];
  const set = (to: readonly string[], typing = false) =>
    change(at, { column, [how]: to }, { typing });
  const few = known && !known.hidden && !known.more && known.words.length <= mostTicks;
  const id = idAt(at, "words");
  return (
    <div className="stack-tight mapping-condition">
      <div className="editor-sentence">
        <span>“{column}”</span>
        <Choice
          id={idAt(at, "how")}
          label={`Must “${column}” be one of them or none of them`}
          value={how}
          options={[
            { value: "is", words: "is one of" },
            { value: "not", words: "is none of" },
          ]}
          change={(to) => change(at, { column, [to]: words })}
        />
        <button type="button" className="plain" onClick={props.remove}>
          Take out<span className="only-heard"> the condition on {column}</span>
        </button>
      </div>
      {few ? (
        <Ticks
          id={id}
          legend={`Words of “${column}”`}
          options={known.words.map(({ text, count }) => ({
            value: text,
            words: `${text === "" ? "empty cell" : text} (${count})`,
          }))}
          chosen={words}
          change={set}
        />
      ) : (
        <div>
          <label htmlFor={id}>
            Words of “{column}”, one a line; an empty line is the empty cell
          </label>
          <textarea
            id={id}
            rows={Math.min(6, Math.max(2, words.length))}
            value={words.join("\n")}
            onChange={({ target }) => set(target.value.split("\n"), true)}
          />
        </div>
      )}
    </div>
  );
}
