"use client";

import { useState } from "react";
import type { ColumnFeedDraft } from "@/lib/views/mapping/draft";
import { wordFor } from "@/lib/views/mapping/word-match";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";

/** A word that is not in this file but may be in the next. */
export function MoreWord(props: { at: Path; feed: ColumnFeedDraft }) {
  const { at, feed } = props;
  const { change } = useMapping();
  const [word, setWord] = useState("");
  const id = idAt(at, "more");
  const words = feed.words ?? [];
  const isThere = word.trim() !== "" && wordFor(words, word) !== undefined;
  const add = () => {
    if (word.trim() === "" || isThere) return;
    change([...at, "words"], [...words, { word: word.trim(), means: null }]);
    setWord("");
  };
  return (
    <div className="form-row">
      <div>
        <label htmlFor={id}>A word that is not listed</label>
        <input
          id={id}
          value={word}
          maxLength={200}
          autoComplete="off"
          onChange={({ target }) => setWord(target.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            add();
          }}
        />
      </div>
      <button type="button" onClick={add} disabled={word.trim() === "" || isThere}>
        Add it
      </button>
      {isThere ? <p className="hint">Something is said of it already.</p> : null}
    </div>
  );
}
