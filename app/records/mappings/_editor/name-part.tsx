"use client";

import { Field } from "@/app/_parts/field";
import { Choice } from "@/app/protocol/_editor/choice";
import type { MappingDraft } from "@/lib/views/mapping/draft";
import { useMapping } from "./editor-tools";

/** What the mapping is called, what it is for, and the time zone of its times. */
export function NamePart(props: {
  draft: MappingDraft;
  zones: readonly string[];
  kept: readonly { readonly name: string; readonly version: number }[];
}) {
  const { draft, kept } = props;
  const { change } = useMapping();
  const same = kept.find(({ name }) => name === draft.name.trim());
  return (
    <div className="form">
      <Field
        label="Name of the mapping"
        name="mapping-name"
        id="m-name"
        value={draft.name}
        maxLength={80}
        autoComplete="off"
        hint={
          same
            ? `Version ${same.version} is kept under this name; a change becomes version ${same.version + 1}.`
            : "By which it is kept, as “Motor log”."
        }
        onChange={({ target }) => change(["name"], target.value, { typing: true })}
      />
      <Field
        label="What the file is, in words"
        name="mapping-says"
        id="m-says"
        value={draft.says ?? ""}
        maxLength={500}
        autoComplete="off"
        hint="May be left empty."
        onChange={({ target }) => change(["says"], target.value || undefined, { typing: true })}
      />
      <Choice
        id="m-zone"
        label="Time zone of its times"
        seen
        value={draft.zone ?? ""}
        options={[
          { value: "", words: "that of the row’s practice" },
          ...props.zones.map((zone) => ({ value: zone, words: zone })),
        ]}
        change={(zone) => change(["zone"], zone || undefined)}
      />
    </div>
  );
}
