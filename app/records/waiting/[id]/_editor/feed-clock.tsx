"use client";

import { useId } from "react";
import type { FileColumn } from "@/lib/reports/waiting-file";
import type { ColumnFeed, Feed } from "./feed";

const orders = [
  ["year-month-day", "2026-07-03 (year first)"],
  ["day-month-year", "03.07.2026 (day first)"],
  ["month-day-year", "07/03/2026 (month first)"],
  ["unix-s", "seconds since 1970"],
  ["unix-ms", "milliseconds since 1970"],
] as const;

/** How a column's days and times of day are written, and a second column that has the time of day. */
export function FeedClock(props: {
  feed: ColumnFeed;
  columns: readonly FileColumn[];
  onChange: (feed: Feed) => void;
}) {
  const { feed } = props;
  const id = useId();
  const { day, hours = 24 } = feed.clock ?? {};
  return (
    <>
      <div>
        <label htmlFor={`${id}-day`}>Days are written</label>
        <select
          id={`${id}-day`}
          value={day ?? ""}
          onChange={(event) =>
            props.onChange({
              ...feed,
              clock: { day: event.currentTarget.value as (typeof orders)[number][0], hours },
            })
          }
        >
          {day ? null : <option value="">choose: two ways are possible</option>}
          {orders.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor={`${id}-hours`}>Hours</label>
        <select
          id={`${id}-hours`}
          value={hours}
          disabled={!day}
          onChange={(event) =>
            day &&
            props.onChange({
              ...feed,
              clock: { day, hours: event.currentTarget.value === "12" ? 12 : 24 },
            })
          }
        >
          <option value={24}>of 24</option>
          <option value={12}>of 12, with AM or PM</option>
        </select>
      </div>
      <div>
        <label htmlFor={`${id}-with`}>Time of day in</label>
        <select
          id={`${id}-with`}
          value={feed.columns[1] ?? ""}
          onChange={(event) =>
            props.onChange({
              ...feed,
              columns: [
                feed.columns[0] ?? "",
                ...(event.currentTarget.value ? [event.currentTarget.value] : []),
              ],
            })
          }
        >
          <option value="">the same column</option>
          {props.columns.map(({ name }) => (
            <option key={name} value={name}>
              column {name}
            </option>
          ))}
        </select>
      </div>
    </>
  );
}
