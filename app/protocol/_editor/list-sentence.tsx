"use client";

import type { ReactNode } from "react";
import type { About } from "@/lib/views/protocol/about";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import type { EditedCondition } from "@/lib/views/protocol/edit/editable";
import {
  aboutList,
  isOverList,
  listOfSentence,
  type SentenceName,
  sentence,
  sentenceChoices,
  sentenceOf,
} from "@/lib/views/protocol/edit/list-sentences";
import { listAbout, listChoices } from "@/lib/views/protocol/edit/vocabulary-choices";
import { listWords } from "@/lib/views/protocol/list-words";
import { type Part, wrappersOf } from "@/lib/views/protocol/part";
import { Choice } from "./choice";
import { idOf, useEditor } from "./editor-tools";
import type { GroupProps } from "./group-props";
import { TotalChoice } from "./total-choice";
import { UnrecordedChoice } from "./unrecorded-choice";

/** A sentence about several things that hang on a unit: some, every, a total, what follows what. */
export function ListSentence(props: {
  at: Path;
  part: Part;
  about: About;
  /** How deep the group is that it stands in. */
  depth: number;
  put: (part: Part, how?: { typing?: boolean }) => void;
  renderGroup: (inner: GroupProps) => ReactNode;
}) {
  const { at, part, about, put } = props;
  const { terms } = useEditor();
  const { core } = part;
  if (!isOverList(core)) return null;
  const name = listOfSentence(core);
  const list = listAbout(about, name);
  if (!list) return <p>It asks for a list that such a unit does not have: remove it.</p>;
  const within = { ...about, list };
  const { one } = listWords(list, about.own);
  const path = [...at, ...wrappersOf(part)];
  return (
    <div className="stack-tight">
      <div className="editor-sentence">
        <Choice
          id={idOf(at, "first")}
          label="What the sentence says"
          value={sentenceOf(part)}
          options={sentenceChoices(list)}
          change={(to) => put(sentence(to as SentenceName, list, part))}
        />
        <Choice
          id={idOf(at, "list")}
          label="Of what"
          value={name}
          options={listChoices(about, terms)}
          change={(to) => {
            const other = listAbout(about, to);
            if (other) put(aboutList(part, other));
          }}
        />
      </div>
      {"total" in core ? <TotalChoice at={at} part={part} about={within} put={put} /> : null}
      {places.flatMap(({ key, legend, empty }) =>
        key in core
          ? [
              <div key={key}>
                {props.renderGroup({
                  at: [...path, key],
                  condition: (core as unknown as Record<string, EditedCondition>)[key] ?? {
                    all: [],
                  },
                  about: within,
                  legend: legend(one),
                  empty: empty(one),
                  depth: Math.max(2, props.depth),
                })}
              </div>,
            ]
          : [],
      )}
      <UnrecordedChoice at={at} part={part} quiet={false} put={put} />
    </div>
  );
}

const any = (one: string) => `Any ${one}: add a row to narrow it.`;
const places: readonly {
  key: string;
  legend: (one: string) => string;
  empty: (one: string) => string;
}[] = [
  { key: "that", legend: (one) => `Which ${one}`, empty: any },
  { key: "are", legend: () => "What must hold of it", empty: () => "Nothing yet: add a row." },
  { key: "one", legend: (one) => `The one ${one}`, empty: any },
  { key: "other", legend: (one) => `The other ${one}`, empty: any },
  { key: "lies", legend: () => "What lies in between", empty: any },
  { key: "each", legend: (one) => `After each such ${one}`, empty: any },
  { key: "comes", legend: () => "there comes", empty: any },
];
