"use client";

import { NumberBox } from "@/app/protocol/_editor/number-box";
import { idAt, useMapping } from "./editor-tools";

/** How far beside a visit's beginning and end a row may lie and still be found as of it. */
export function MinutesBox(props: { place: number; minutes: number | undefined }) {
  const { change } = useMapping();
  const at = ["tables", props.place, "minutes"];
  return (
    <p className="editor-sentence">
      <span>Rows find their visit by chair, time and tooth. Up to</span>
      <NumberBox
        id={idAt(at)}
        label="Minutes beside the visit"
        value={props.minutes ?? 0}
        unit="minutes"
        change={(minutes) =>
          change(at, minutes === null ? undefined : Math.min(240, minutes), { typing: true })
        }
      />
      <span>before its beginning or after its end still count as within it.</span>
    </p>
  );
}
