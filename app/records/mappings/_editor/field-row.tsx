"use client";

import { canonicalJson } from "@/lib/views/canonical-json";
import type { FeedDraft } from "@/lib/views/mapping/draft";
import type { FieldTerms } from "@/lib/views/mapping/terms";
import { AlwaysBox } from "./always-box";
import { ColumnsBox } from "./columns-box";
import { idAt, useMapping } from "./editor-tools";
import { FeedChoice } from "./feed-choice";
import { WordsPart } from "./words-part";

/** One field of a table: what it holds, what feeds it, and what the first rows have in it then. */
export function FieldRow(props: {
  table: { readonly place: number; readonly name: string; readonly fields: readonly FieldTerms[] };
  field: FieldTerms;
  feed: FeedDraft | undefined;
  /** A word of another field fills it, too. */
  filled: boolean;
  firsts: readonly string[];
}) {
  const { field, feed, table } = props;
  const { reasons } = useMapping();
  const at = ["tables", table.place, "fields", field.name];
  const id = idAt(at);
  const why = reasons.find(
    (one) =>
      one.table === table.name &&
      one.field === field.name &&
      canonicalJson(one.feed) === canonicalJson(feed),
  )?.why;
  const lacks = field.required && !feed && !props.filled;
  return (
    <li className="mapping-field">
      <div className="mapping-said">
        <label htmlFor={id}>
          {field.words}
          {field.required ? <span className="tag"> required</span> : null}
        </label>
        <p className="hint" id={`${id}-hint`}>
          {field.says} <span className="nowrap">Holds</span> {field.holds}.
        </p>
      </div>
      <div className="mapping-fed stack-tight">
        <div className="form-row">
          <FeedChoice at={at} field={field} feed={feed} invalid={lacks} />
          {feed && "always" in feed ? <AlwaysBox at={at} field={field} feed={feed} /> : null}
        </div>
        {feed && "columns" in feed ? <ColumnsBox at={at} field={field} feed={feed} /> : null}
        {lacks ? (
          <p className="field-error" id={`${id}-lacks`}>
            Nothing feeds it yet; every row would be held.
          </p>
        ) : null}
        {!feed && props.filled ? <p className="hint">Filled by words of another field.</p> : null}
        {why ? <p className="hint">Proposed: {why}</p> : null}
        {props.firsts.length > 0 ? (
          <p className="mapping-firsts">
            <span className="soft">The first rows have </span>
            {props.firsts.join(", ")}
          </p>
        ) : null}
        {feed && "columns" in feed && feed.columns.length > 0 ? (
          <WordsPart
            key={feed.columns[0]}
            at={at}
            field={field}
            feed={feed}
            others={table.fields}
          />
        ) : null}
      </div>
    </li>
  );
}
