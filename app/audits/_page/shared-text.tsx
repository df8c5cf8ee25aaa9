"use client";

import { useId, useLayoutEffect, useRef } from "react";
import type { TextField } from "@/lib/views/audits/text-field";
import { useKeptText } from "./use-kept-text";

/** A text that several people may type into at once, kept as it is typed. */
export function SharedText(props: { audit: number; of: TextField; rows?: number }) {
  const { audit, of } = props;
  const { text, state, wrong, from, type } = useKeptText(audit, of.key, of);
  const id = useId();
  const box = useRef<HTMLTextAreaElement>(null);
  const caret = useRef<{ text: string; at: number }>(null);
  // What others typed comes in before or behind the caret, which stays at the words it stood at.
  useLayoutEffect(() => {
    const before = caret.current;
    const area = box.current;
    if (area && before && before.text !== text && document.activeElement === area) {
      const place = placeIn(before.text, text, before.at);
      area.setSelectionRange(place, place);
    }
    caret.current = { text, at: area?.selectionStart ?? 0 };
  }, [text]);
  const said =
    state === "kept"
      ? from
        ? `Kept. ${from} has typed here too.`
        : text === of.text
          ? of.last
          : "Kept."
      : state === "waiting"
        ? "Not kept yet."
        : "Keeping …";
  return (
    <div className="shared-text">
      <label htmlFor={id}>{of.label}</label>
      <p className="hint" id={`${id}-hint`}>
        {of.hint}
      </p>
      <textarea
        ref={box}
        id={id}
        rows={props.rows ?? 3}
        maxLength={20_000}
        value={text}
        aria-describedby={`${id}-hint ${id}-said`}
        aria-invalid={wrong ? true : undefined}
        onChange={({ target }) => {
          caret.current = { text: target.value, at: target.selectionStart };
          type(target.value);
        }}
        onSelect={({ currentTarget }) => {
          caret.current = { text, at: currentTarget.selectionStart };
        }}
      />
      <p className="small soft" id={`${id}-said`} role="status">
        {wrong ? <span className="field-error">{wrong}</span> : said}
      </p>
    </div>
  );
}

/** Where a place of the text before lies in the text after. */
function placeIn(before: string, after: string, at: number): number {
  let same = 0;
  while (same < at && before[same] === after[same]) same += 1;
  return same === at ? at : Math.max(0, after.length - (before.length - at));
}
