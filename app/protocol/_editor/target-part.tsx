"use client";

import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { idOf, useEditor } from "./editor-tools";
import { NumberBox } from "./number-box";
import { TextBox } from "./text-box";
import { Tick } from "./tick";
import { Wrong } from "./wrong";

/** The share that should meet it, whose choice that is, and below which share of records nothing is said. */
export function TargetPart(props: { criterion: EditedCriterion }) {
  const { criterion } = props;
  const { change } = useEditor();
  const floor = criterion.completenessFloor;
  return (
    <div className="stack-tight">
      <div className="editor-sentence">
        <span>Target: met in at least</span>
        <NumberBox
          id={idOf(["target"])}
          label="Target, per cent"
          value={criterion.target}
          times={100}
          unit="%"
          change={(target) => change(["target"], target, { typing: true })}
        />
      </div>
      <Wrong at={["target"]} />
      <TextBox
        at={["targetSource"]}
        label="Whose choice the target is"
        value={criterion.targetSource}
        most={200}
      />
      <Tick
        id={idOf(["floor", "there"])}
        words="Say nothing where too little is recorded (leave it out for what is about recording itself: not recorded is then not met)"
        value={floor !== null}
        change={(there) => change(["completenessFloor"], there ? 0.9 : null)}
      />
      {floor === null ? null : (
        <div className="editor-sentence">
          <span>Not assessable under</span>
          <NumberBox
            id={idOf(["completenessFloor"])}
            label="Completeness floor, per cent"
            value={floor}
            times={100}
            unit="% recorded"
            change={(share) => change(["completenessFloor"], share ?? 0, { typing: true })}
          />
        </div>
      )}
      <Wrong at={["completenessFloor"]} />
    </div>
  );
}
