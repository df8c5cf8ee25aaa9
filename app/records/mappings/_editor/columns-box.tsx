"use client";

import { Choice } from "@/app/protocol/_editor/choice";
import { clockChoices, clockOf, clockValue } from "@/lib/views/mapping/clock-words";
import type { ColumnFeedDraft } from "@/lib/views/mapping/draft";
import { newFeed } from "@/lib/views/mapping/new-feed";
import { type FieldTerms, holdsTime } from "@/lib/views/mapping/terms";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";

/** How a column is read: its unit; of a moment the order of the day, and the column that has the time of day. */
export function ColumnsBox(props: { at: Path; field: FieldTerms; feed: ColumnFeedDraft }) {
  const { at, field, feed } = props;
  const { change, columns } = useMapping();
  const [first, second = ""] = feed.columns;
  const isMoment = field.type === "instant";
  if (field.units.length < 2 && !holdsTime(field)) return null;
  return (
    <div className="form-row">
      {field.units.length > 1 ? (
        <Choice
          id={idAt(at, "unit")}
          label="Unit in the file"
          seen
          value={feed.unit ?? field.units[0]?.value ?? ""}
          options={field.units}
          change={(unit) =>
            change([...at, "unit"], unit === field.units[0]?.value ? undefined : unit)
          }
        />
      ) : null}
      {isMoment ? (
        <Choice
          id={idAt(at, "time")}
          label="Time of day"
          seen
          value={second}
          options={[
            { value: "", words: "in the same column" },
            ...columns
              .filter(({ name }) => name !== first)
              .map(({ name }) => ({ value: name, words: name })),
          ]}
          change={(time) =>
            change(at, newFeed(field, [first ?? "", ...(time ? [time] : [])], columns, feed))
          }
        />
      ) : null}
      {holdsTime(field) ? (
        <Choice
          id={idAt(at, "clock")}
          label="Written"
          seen
          value={clockValue(feed.clock)}
          options={[{ value: "", words: "as 2026-07-03T09:10 (ISO 8601)" }, ...clockChoices]}
          change={(value) => change([...at, "clock"], clockOf(value))}
        />
      ) : null}
    </div>
  );
}
