"use client";

import { useId } from "react";
import type { FieldOffer, FileColumn } from "@/lib/reports/waiting-file";
import type { Feed } from "./feed";
import { FeedClock } from "./feed-clock";
import { FeedWords } from "./feed-words";

/** One field: nothing, a column, the same in every row, or a running number; and what its cells mean. */
export function FieldFeed(props: {
  offer: FieldOffer;
  table: string;
  columns: readonly FileColumn[];
  feed: Feed | undefined;
  reason: string | undefined;
  onChange: (feed: Feed | null) => void;
}) {
  const { offer, feed, columns } = props;
  const id = useId();
  const from = !feed
    ? ""
    : "always" in feed
      ? "always"
      : "numbered" in feed
        ? "numbered"
        : `column ${feed.columns[0]}`;
  const choose = (chosen: string) => {
    if (chosen === "") return props.onChange(null);
    if (chosen === "always") return props.onChange({ always: offer.choices[0] ?? "?" });
    if (chosen === "numbered") return props.onChange({ numbered: true });
    props.onChange({ columns: [chosen.slice("column ".length)] });
  };
  const column =
    feed && "columns" in feed ? columns.find(({ name }) => name === feed.columns[0]) : undefined;
  return (
    <fieldset className="fed-field stack-tight">
      <legend>
        {offer.name} {offer.required ? <span className="tag">required</span> : null}
      </legend>
      <p className="hint">{offer.says}</p>
      <div className="form-row">
        <div>
          <label htmlFor={`${id}-from`}>Fed by</label>
          <select
            id={`${id}-from`}
            value={from}
            onChange={(event) => choose(event.currentTarget.value)}
          >
            <option value="">nothing: not recorded</option>
            {columns.map(({ name }) => (
              <option key={name} value={`column ${name}`}>
                column {name}
              </option>
            ))}
            <option value="always">the same in every row</option>
            {offer.name === "seq" ? (
              <option value="numbered">numbered in the order of the file</option>
            ) : null}
          </select>
        </div>
        {feed && "always" in feed ? (
          <div>
            <label htmlFor={`${id}-always`}>Always</label>
            {offer.choices.length > 0 ? (
              <select
                id={`${id}-always`}
                value={feed.always}
                onChange={(event) => props.onChange({ always: event.currentTarget.value })}
              >
                {offer.choices.map((choice) => (
                  <option key={choice}>{choice}</option>
                ))}
              </select>
            ) : (
              <input
                id={`${id}-always`}
                value={feed.always}
                onChange={(event) => props.onChange({ always: event.currentTarget.value || "?" })}
              />
            )}
          </div>
        ) : null}
        {feed && "columns" in feed && offer.units.length > 1 ? (
          <div>
            <label htmlFor={`${id}-unit`}>Its unit</label>
            <select
              id={`${id}-unit`}
              value={feed.unit ?? offer.units[0]}
              onChange={(event) =>
                props.onChange({ ...feed, unit: event.currentTarget.value as typeof feed.unit })
              }
            >
              {offer.units.map((unit) => (
                <option key={unit}>{unit}</option>
              ))}
            </select>
          </div>
        ) : null}
        {feed && "columns" in feed && offer.isMoment ? (
          <FeedClock feed={feed} columns={columns} onChange={props.onChange} />
        ) : null}
      </div>
      {props.reason && feed ? <p className="hint">{props.reason}</p> : null}
      {feed && "columns" in feed && column && offer.choices.length > 0 ? (
        <FeedWords
          feed={feed}
          column={column}
          choices={offer.choices}
          reasoned={offer.name === "status"}
          onChange={props.onChange}
        />
      ) : null}
    </fieldset>
  );
}
