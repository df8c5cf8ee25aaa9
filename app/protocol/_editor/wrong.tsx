"use client";

import type { Path } from "@/lib/views/protocol/edit/at-path";
import { useEditor } from "./editor-tools";

/**
 * What is wrong with the part at a path.
 *
 * @param props.within also what is wrong with anything inside it
 */
export function Wrong(props: { at: Path; within?: boolean; id?: string }) {
  const { wrong } = useEditor();
  const path = props.at.join(".");
  const messages = Object.entries(wrong).flatMap(([key, message]) =>
    key === path || (props.within && key.startsWith(`${path}.`)) ? [message] : [],
  );
  if (messages.length === 0) return null;
  return (
    <p className="field-error" id={props.id}>
      {[...new Set(messages)].join(" ")}
    </p>
  );
}
