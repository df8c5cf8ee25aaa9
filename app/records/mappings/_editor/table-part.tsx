"use client";

import type { TableDraft } from "@/lib/views/mapping/draft";
import { fedFields } from "@/lib/views/mapping/missing";
import type { PreviewTable } from "@/lib/views/mapping/preview-view";
import { ConditionsPart } from "./conditions-part";
import { idAt, useMapping } from "./editor-tools";
import { FieldRow } from "./field-row";
import { MinutesBox } from "./minutes-box";
import { PreviewRows } from "./preview-rows";

/** One table that the file feeds: its rows, its fields, and what the first rows become. */
export function TablePart(props: {
  place: number;
  table: TableDraft;
  preview: PreviewTable | undefined;
}) {
  const { place, table } = props;
  const { terms, change } = useMapping();
  const about = terms.find(({ name }) => name === table.table);
  if (!about) return null;
  const fed = fedFields(table);
  // Of the same table as what is fed now; the preview may be a moment older.
  const preview = props.preview?.table === table.table ? props.preview : undefined;
  const findsVisit = "visit.at" in table.fields;
  const shown = about.fields.filter(
    ({ name, required }) =>
      (required && !(findsVisit && name === "session_id")) || name in table.fields,
  );
  const folded = about.fields.filter((field) => !shown.includes(field));
  const row = (field: (typeof about.fields)[number]) => (
    <FieldRow
      key={field.name}
      table={{ place, name: table.table, fields: about.fields }}
      field={field}
      feed={table.fields[field.name]}
      filled={fed.has(field.name)}
      firsts={preview?.firsts[field.name] ?? []}
    />
  );
  const heading = idAt(["tables", place], "heading");
  return (
    <section className="editor-part stack" aria-labelledby={heading}>
      <div className="row mapping-table-head">
        <h2 id={heading} tabIndex={-1}>
          {about.words}
        </h2>
        <button
          type="button"
          className="plain"
          onClick={() => change(["tables", place], undefined, { focus: "m-more-tables" })}
        >
          Do not feed {about.words.toLowerCase()}
        </button>
      </div>
      <p className="soft">{about.says}</p>
      <ConditionsPart place={place} heading={about.words} table={table} />
      <ul className="mapping-fields">{shown.map(row)}</ul>
      {folded.length > 0 ? (
        <details>
          <summary>
            {folded.length} more {folded.length === 1 ? "field" : "fields"} of{" "}
            {about.words.toLowerCase()} that nothing feeds
          </summary>
          <ul className="mapping-fields">{folded.map(row)}</ul>
        </details>
      ) : null}
      {findsVisit ? <MinutesBox place={place} minutes={table.minutes} /> : null}
      {preview ? <PreviewRows heading={about.words} preview={preview} /> : null}
    </section>
  );
}
