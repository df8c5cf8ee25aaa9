"use client";

import { useId, useState } from "react";
import type { FileColumn } from "@/lib/reports/waiting-file";
import type { ColumnFeed, Feed, Word } from "./feed";

const alike = (text: string) => text.replace(/\s+/g, " ").trim().toLowerCase();

/** What the words of a column mean: each that the file has, and those with a number in them. */
export function FeedWords(props: {
  feed: ColumnFeed;
  column: FileColumn;
  choices: readonly string[];
  /** An excepted step needs its reason. */
  reasoned: boolean;
  onChange: (feed: Feed) => void;
}) {
  const { feed, column, choices } = props;
  const id = useId();
  const words = feed.words ?? [];
  const patterns = words.filter(({ word }) => word.includes("{number}"));
  const covered = (text: string) =>
    patterns.some(({ word }) => {
      const [before = "", after = ""] = alike(word).split("{number}");
      return alike(text).startsWith(before) && alike(text).endsWith(after);
    });
  const listed = [
    ...patterns.map(({ word }) => ({ text: word, count: "" })),
    ...column.words.filter(({ text }) => !covered(text)),
    { text: "", count: column.empty },
  ];
  const meant = (text: string) => words.find(({ word }) => alike(word) === alike(text));
  const unsettled = listed.filter(
    ({ text }) => text !== "" && !meant(text) && !choices.includes(alike(text)),
  ).length;
  // Settling the last word must not fold the list away under the person's hands.
  const [open] = useState(unsettled > 0);
  const set = (text: string, changed: Word | null) =>
    props.onChange({
      ...feed,
      words: [
        ...words.filter(({ word }) => alike(word) !== alike(text)),
        ...(changed ? [changed] : []),
      ],
    });
  return (
    <details open={open}>
      <summary>
        What its words mean ({listed.length}
        {unsettled > 0 ? `, ${unsettled} not yet understood` : ""})
      </summary>
      {column.more ? (
        <p className="hint">The most frequent are listed; others are taken as they stand.</p>
      ) : null}
      <ul className="word-list">
        {listed.map(({ text, count }) => {
          const found = meant(text);
          const asItStands = choices.includes(alike(text));
          const field = `${id}-${text}`;
          return (
            <li key={text} className="form-row">
              <div>
                <label htmlFor={field}>
                  {text === "" ? "an empty cell" : `“${text}”`}{" "}
                  {count ? <span className="soft">({count})</span> : null}
                </label>
                <select
                  id={field}
                  value={found ? (found.means ?? "null") : ""}
                  onChange={(event) => {
                    const chosen = event.currentTarget.value;
                    if (chosen === "") return set(text, null);
                    set(text, { ...found, word: text, means: chosen === "null" ? null : chosen });
                  }}
                >
                  <option value="">
                    {text === ""
                      ? "not recorded"
                      : asItStands
                        ? "as it stands"
                        : "as it stands: would be held"}
                  </option>
                  {text === "" ? null : <option value="null">not recorded</option>}
                  {choices.map((choice) => (
                    <option key={choice}>{choice}</option>
                  ))}
                </select>
              </div>
              {props.reasoned && found?.means === "excepted" ? (
                <div>
                  <label htmlFor={`${field}-reason`}>for the reason (code)</label>
                  <input
                    id={`${field}-reason`}
                    value={found.also?.reason ?? ""}
                    placeholder="not-possible"
                    onChange={(event) =>
                      set(text, {
                        ...found,
                        also: { ...found.also, reason: event.currentTarget.value },
                      })
                    }
                  />
                </div>
              ) : null}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
