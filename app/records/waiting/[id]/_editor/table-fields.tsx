"use client";

import { Section } from "../../../../_parts/section";
import type { Around, Feed, TableFeed } from "./feed";
import { FieldFeed } from "./field-feed";

/** What feeds the fields of one table; fields that nothing feeds stand folded below. */
export function TableFields(
  props: Around & {
    table: TableFeed;
    onChange: (table: TableFeed) => void;
    onRemove: (() => void) | undefined;
  },
) {
  const { table } = props;
  const offers = props.offers[table.table] ?? [];
  const set = (name: string, feed: Feed | null) => {
    const { [name]: _, ...others } = table.fields;
    props.onChange({ ...table, fields: feed ? { ...others, [name]: feed } : others });
  };
  const shown = offers.filter(({ name, required }) => required || name in table.fields);
  const folded = offers.filter((offer) => !shown.includes(offer));
  const says = props.tables.find(({ name }) => name === table.table)?.says;
  const row = (offer: (typeof offers)[number]) => (
    <FieldFeed
      key={offer.name}
      offer={offer}
      table={table.table}
      columns={props.columns}
      feed={table.fields[offer.name]}
      reason={props.reasons[`${table.table} ${offer.name}`]}
      onChange={(feed) => set(offer.name, feed)}
    />
  );
  return (
    <Section title={`Table ${table.table}`} note={says}>
      {(table.only ?? []).map((condition) => (
        <p key={condition.column}>
          Only rows whose “{condition.column}” is{" "}
          {condition.not
            ? `not ${condition.not.map((word) => (word === "" ? "empty" : word)).join(" or ")}`
            : condition.is?.join(" or ")}
          .{" "}
          <button type="button" onClick={() => props.onChange({ ...table, only: undefined })}>
            Feed it from every row
          </button>
        </p>
      ))}
      {shown.map(row)}
      {folded.length > 0 ? (
        <details>
          <summary>
            Other fields of {table.table} ({folded.length})
          </summary>
          <div className="stack">{folded.map(row)}</div>
        </details>
      ) : null}
      {props.onRemove ? (
        <p>
          <button type="button" onClick={props.onRemove}>
            Do not feed {table.table}
          </button>
        </p>
      ) : null}
    </Section>
  );
}
