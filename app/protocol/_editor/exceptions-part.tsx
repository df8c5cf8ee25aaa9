"use client";

import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { idOf, useEditor } from "./editor-tools";
import { Tick } from "./tick";
import { Ticks } from "./ticks";
import { Wrong } from "./wrong";

/** How a unit may rightly not be met. */
export function ExceptionsPart(props: { criterion: EditedCriterion }) {
  const { unit, exceptions } = props.criterion;
  const { change, terms } = useEditor();
  const path = ["exceptions"];
  if (unit === "chair-day") return <p>No exception can be entered for a day of a chair.</p>;
  return (
    <div className="stack-tight">
      <Tick
        id={idOf(path)}
        words="It may rightly not be met, with a coded reason"
        value={exceptions !== null}
        change={(foreseen) => change(path, foreseen ? { steps: [], reasons: [] } : null)}
      />
      <Wrong at={path} within />
      {exceptions ? (
        <>
          <Ticks
            id={idOf(path, "reasons")}
            legend="Reasons that are offered"
            options={terms.reasons}
            chosen={exceptions.reasons}
            change={(reasons) => change([...path, "reasons"], reasons)}
          />
          <p className="hint">
            A record may bear another reason: that counts too, and is pointed out. Own reasons are
            added on the page of the protocol.
          </p>
          <details open={exceptions.steps.length > 0 || undefined}>
            <summary>Steps whose status “excepted” counts ({exceptions.steps.length})</summary>
            <Ticks
              id={idOf(path, "steps")}
              legend="Steps"
              quiet
              options={terms.steps}
              chosen={exceptions.steps}
              change={(steps) => change([...path, "steps"], steps)}
            />
          </details>
        </>
      ) : null}
    </div>
  );
}
