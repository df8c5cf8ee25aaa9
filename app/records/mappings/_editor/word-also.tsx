"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import type { WordDraft } from "@/lib/views/mapping/draft";
import type { FieldTerms } from "@/lib/views/mapping/terms";

/** Other fields of the same table that a word fills: “Hypochlorit 3,0 %” is irrigant and strength at once. */
export function WordAlso(props: {
  id: string;
  said: WordDraft;
  fields: readonly FieldTerms[];
  set: (also: Readonly<Record<string, string>>, typing?: boolean) => void;
}) {
  const { id, said, fields } = props;
  const also = said.also ?? {};
  const free = fields.filter(({ name }) => !(name in also));
  return (
    <div className="stack-tight">
      {Object.entries(also).map(([name, value]) => {
        const field = fields.find((one) => one.name === name);
        const words = field?.words ?? name;
        const { [name]: _, ...rest } = also;
        return (
          <div key={name} className="editor-sentence">
            {field && field.choices.length > 0 ? (
              <Choice
                id={`${id}-${name}`}
                label={words}
                seen
                value={value}
                options={field.choices}
                change={(chosen) => props.set({ ...also, [name]: chosen })}
              />
            ) : (
              <span className="editor-choice">
                <label htmlFor={`${id}-${name}`}>{words}</label>
                <input
                  id={`${id}-${name}`}
                  value={value}
                  size={12}
                  maxLength={200}
                  autoComplete="off"
                  onChange={({ target }) => props.set({ ...also, [name]: target.value }, true)}
                />
              </span>
            )}
            <button type="button" className="plain" onClick={() => props.set(rest)}>
              Take out<span className="only-heard"> {words}</span>
            </button>
          </div>
        );
      })}
      <Choice
        id={`${id}-more`}
        label={`Another field that “${said.word}” fills`}
        value=""
        options={[
          { value: "", words: "another field …" },
          ...free.map(({ name, words }) => ({ value: name, words })),
        ]}
        change={(name) =>
          name && props.set({ ...also, [name]: said.word.includes("{number}") ? "{number}" : "" })
        }
      />
    </div>
  );
}
