"use client";

import type { About } from "@/lib/views/protocol/about";
import { moved } from "@/lib/views/protocol/edit/at-path";
import { newExclusion, reworded } from "@/lib/views/protocol/edit/beginnings";
import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { ConditionGroup } from "./condition-group";
import { idOf, useEditor } from "./editor-tools";
import { TextBox } from "./text-box";
import { Wrong } from "./wrong";

/** What is left out first, in this order, and under which words it is counted. */
export function ExclusionsPart(props: { exclusions: EditedCriterion["exclusions"]; about: About }) {
  const { exclusions, about } = props;
  const { change, terms } = useEditor();
  const path = ["exclusions"];
  return (
    <div className="stack-tight">
      <p className="hint">
        A unit that is left out counts neither for nor against. It is counted under the first of
        these that holds.
      </p>
      <ol className="editor-rows">
        {exclusions.map((one, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: their place is what they are edited by.
          <li key={place} className="editor-row">
            <div className="editor-said stack-tight">
              <TextBox
                at={[...path, place, "inWords"]}
                label={`Left out, ${place + 1}`}
                hint="In words, as: primary teeth."
                value={one.inWords}
                most={160}
                change={(words) => change([...path, place], reworded(one, words), { typing: true })}
              />
              <Wrong at={[...path, place, "reason"]} />
              <ConditionGroup
                at={[...path, place, "when"]}
                condition={one.when}
                about={about}
                legend={`Left out if, ${place + 1}`}
                empty="Nothing yet: add a row."
                depth={1}
              />
            </div>
            <div className="editor-buttons">
              <button
                type="button"
                className="plain"
                disabled={place === 0}
                onClick={() => change(path, moved(exclusions, place, -1))}
              >
                Up<span className="only-heard">: {one.inWords}</span>
              </button>
              <button
                type="button"
                className="plain"
                onClick={() => change([...path, place], undefined, { focus: [idOf(path, "add")] })}
              >
                Remove<span className="only-heard">: {one.inWords}</span>
              </button>
            </div>
          </li>
        ))}
      </ol>
      <button
        type="button"
        id={idOf(path, "add")}
        className="plain"
        onClick={() =>
          change(path, [...exclusions, newExclusion(about, terms)], {
            focus: [idOf([...path, exclusions.length, "inWords"])],
          })
        }
      >
        Add what is left out
      </button>
      <Wrong at={path} />
    </div>
  );
}
