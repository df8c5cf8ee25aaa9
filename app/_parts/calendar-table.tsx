"use client";

import type { DayCalendar } from "@/lib/views/day-calendar";
import { TableBox } from "./table-box";

/** A chair's days by week; each day is a shape to the eye and a sentence to whoever points at it or hears it. */
export function CalendarTable(props: { label: string; calendar: DayCalendar }) {
  const { months, rows } = props.calendar;
  return (
    <TableBox label={props.label}>
      <table className="calendar">
        <thead>
          <tr>
            <td />
            {months.map(({ name, weeks }) => (
              <th key={name} colSpan={weeks} scope="colgroup">
                {weeks > 1 ? name : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ weekday, days }) => (
            <tr key={weekday}>
              <th scope="row">{weekday}</th>
              {days.map((one, place) =>
                one === null ? (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a day outside the period has nothing but its place.
                  <td key={place} />
                ) : (
                  <td key={one.day} className={`day-${one.tone}`} title={one.words}>
                    <span aria-hidden="true">{one.shape}</span>
                    <span className="only-heard">{one.words}</span>
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
