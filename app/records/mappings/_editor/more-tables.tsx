"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import type { MappingDraft } from "@/lib/views/mapping/draft";
import { idAt, useMapping } from "./editor-tools";

/** Adds a table that the file feeds, too; one table may be fed twice, as by two columns that are two steps. */
export function MoreTables(props: { draft: MappingDraft }) {
  const { change, terms } = useMapping();
  const { tables } = props.draft;
  return (
    <Choice
      id="m-more-tables"
      label="Feed another table"
      seen
      value=""
      disabled={tables.length >= terms.length}
      options={[
        { value: "", words: "choose …" },
        ...terms.map(({ name, words, says }) => ({ value: name, words: `${words}: ${says}` })),
      ]}
      change={(table) =>
        table &&
        change(["tables"], [...tables, { table, fields: {} }], {
          focus: idAt(["tables", tables.length], "heading"),
        })
      }
    />
  );
}
