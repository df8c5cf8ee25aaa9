"use client";

import type { Path } from "@/lib/views/protocol/edit/at-path";
import type { Part } from "@/lib/views/protocol/part";
import { Choice } from "./choice";
import { idOf } from "./editor-tools";

const options = [
  { value: "open", words: "it stays not recorded" },
  { value: "no", words: "it does not hold" },
  { value: "yes", words: "it holds" },
];

/** What counts where nothing is recorded; folded as long as it stays open. */
export function UnrecordedChoice(props: {
  at: Path;
  part: Part;
  /** Not shown as long as it stays open. */
  quiet: boolean;
  put: (part: Part) => void;
}) {
  const { part } = props;
  if ("recorded" in part.core || (props.quiet && part.unrecorded === "open")) return null;
  return (
    <details className="editor-unrecorded" open={part.unrecorded !== "open" || undefined}>
      <summary>If not recorded …</summary>
      <Choice
        id={idOf(props.at, "unrecorded")}
        label="Where it is not recorded"
        seen
        value={part.unrecorded}
        options={options}
        change={(to) =>
          props.put({ ...part, unrecorded: to === "no" || to === "yes" ? to : "open" })
        }
      />
    </details>
  );
}
