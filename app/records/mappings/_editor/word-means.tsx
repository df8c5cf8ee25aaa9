"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import type { WordDraft } from "@/lib/views/mapping/draft";
import type { FieldTerms } from "@/lib/views/mapping/terms";

const stands = "stands";
const nothing = "nothing";
const text = "text";
const is = "is:";

/** What a word of the file means in a field; undefined is "as it stands". */
export function WordMeans(props: {
  id: string;
  word: string;
  field: FieldTerms;
  said: WordDraft | null;
  set: (means: string | null | undefined, typing?: boolean) => void;
}) {
  const { id, field, said, word } = props;
  const means = said?.means;
  const isChoice = field.choices.some(({ value }) => value === means);
  const value =
    means === undefined ? stands : means === null ? nothing : isChoice ? `${is}${means}` : text;
  return (
    <div className="editor-sentence">
      <Choice
        id={id}
        label={`“${word}” means`}
        value={value}
        options={[
          {
            value: stands,
            words: word === "empty cell" ? "nothing is said of it" : "as it stands",
          },
          { value: nothing, words: "not recorded" },
          ...field.choices.map((one) => ({ value: `${is}${one.value}`, words: one.words })),
          { value: text, words: "another text …" },
        ]}
        change={(chosen) => {
          if (chosen === stands) props.set(undefined);
          else if (chosen === nothing) props.set(null);
          else props.set(chosen === text ? "" : chosen.slice(is.length));
        }}
      />
      {value === text ? (
        <span className="editor-choice">
          <label className="only-heard" htmlFor={`${id}-text`}>
            What “{word}” means
          </label>
          <input
            id={`${id}-text`}
            value={means ?? ""}
            maxLength={200}
            autoComplete="off"
            onChange={({ target }) => props.set(target.value, true)}
          />
        </span>
      ) : null}
    </div>
  );
}
