"use client";

import { TableBox } from "@/app/_parts/table-box";
import type { WeekGrid } from "@/lib/views/week-grid";

/** Visits by chair and week; a week without one is said in words. */
export function WeekTable(props: { grid: WeekGrid }) {
  const { weeks, chairs } = props.grid;
  return (
    <TableBox label="Visits by chair and week">
      <table>
        <caption>Weeks by their first day in the period.</caption>
        <thead>
          <tr>
            <th scope="col">Chair</th>
            {weeks.map((week) => (
              <th key={week.id} scope="col" className="num">
                {week.words}
              </th>
            ))}
            <th scope="col" className="num">
              All
            </th>
          </tr>
        </thead>
        <tbody>
          {chairs.map((chair) => (
            <tr key={chair.id}>
              <th scope="row" className="nowrap">
                {chair.name}
              </th>
              {chair.cells.map((cell) => (
                <td key={cell.week} className={cell.gap ? "num missing" : "num"}>
                  {cell.words}
                </td>
              ))}
              <td className="num">{chair.whole}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
