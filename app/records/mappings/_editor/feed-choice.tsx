"use client";

import type { FeedDraft } from "@/lib/views/mapping/draft";
import { chosenFeed, feedMarks, feedValue } from "@/lib/views/mapping/feed-choices";
import type { FieldTerms } from "@/lib/views/mapping/terms";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";

/** What feeds a field: a column, the same in every row, a running number, or nothing. */
export function FeedChoice(props: {
  at: Path;
  field: FieldTerms;
  feed: FeedDraft | undefined;
  invalid: boolean;
}) {
  const { at, field, feed } = props;
  const { change, columns } = useMapping();
  const id = idAt(at);
  const value = feedValue(feed);
  const isKnown =
    !value.startsWith(feedMarks.column) ||
    columns.some(({ name }) => `${feedMarks.column}${name}` === value);
  return (
    <select
      id={id}
      value={value}
      aria-invalid={props.invalid || undefined}
      aria-describedby={props.invalid ? `${id}-hint ${id}-lacks` : `${id}-hint`}
      onChange={({ target }) => change(at, chosenFeed(target.value, field, columns, feed))}
    >
      <option value={feedMarks.nothing}>nothing: not recorded</option>
      {isKnown ? null : <option value={value}>{value.slice(feedMarks.column.length)}</option>}
      <optgroup label="A column of the file">
        {columns.map(({ name }) => (
          <option key={name} value={`${feedMarks.column}${name}`}>
            {name}
          </option>
        ))}
      </optgroup>
      <optgroup label="No column">
        <option value={feedMarks.always}>the same in every row …</option>
        {field.name === "seq" ? (
          <option value={feedMarks.numbered}>numbered in the order of the file</option>
        ) : null}
      </optgroup>
    </select>
  );
}
