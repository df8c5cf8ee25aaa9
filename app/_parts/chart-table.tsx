"use client";

import type { ChartTable as Table } from "@/lib/views/chart-rows";
import { TableBox } from "./table-box";
import { WhenOpened } from "./when-opened";

/** What a chart draws, as a table, folded under it. */
export function ChartTable(props: { label: string; table: Table }) {
  return (
    <WhenOpened
      summary={
        <>
          As a table<span className="only-heard"> ({props.label})</span>
        </>
      }
      content={() => <Rows {...props} />}
    />
  );
}

function Rows(props: { label: string; table: Table }) {
  const [first, ...others] = props.table.head;
  return (
    <TableBox label={props.label}>
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">{first}</th>
            {others.map((head) => (
              <th key={head} scope="col" className="num">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.table.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.cells[0]}</th>
              {others.map((head, place) => (
                <td key={head} className="num" data-label={head}>
                  {row.cells[place + 1]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
